import { Entries } from '../keep/Entries.tsx';
import { DateBlank } from '../question/DateBlank.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import { useDates } from '../units/useDates.ts';
import { today } from './nextPlan.ts';
import type { PartProps } from './parts.ts';

/** What was done to the soil. */
export function Tillage({ record, change, open }: PartProps) {
  const dates = useDates();
  return (
    <Entries
      field="tillage"
      entries={record.tillage}
      noun="pass"
      none="No tillage is entered."
      addText="Add a pass"
      most={100}
      make={() => ({ date: today(), note: '' })}
      commit={(tillage) => change({ tillage })}
      forget={(prefix) => open.desk.forgetTyped(prefix)}
    >
      {(pass, field, set) => (
        <>
          <DateBlank
            id={`blank-${field}.date`}
            field={`${field}.date`}
            value={pass.date}
            echo={dates.withWeekday(pass.date)}
            commit={(date) => date && set({ date })}
          />
          <TextBlank field={`${field}.note`} value={pass.note} most={300} commit={(note) => set({ note })} />
        </>
      )}
    </Entries>
  );
}
