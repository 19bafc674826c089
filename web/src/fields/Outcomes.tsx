import type { FieldRecord } from '../api/contract.ts';
import { Entries } from '../keep/Entries.tsx';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { DateBlank } from '../question/DateBlank.tsx';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { CropBlank } from '../question/sharedBlanks.tsx';
import { useDates } from '../units/useDates.ts';
import { nextPlan, today } from './nextPlan.ts';
import type { PartProps } from './parts.ts';

type Outcome = FieldRecord['outcomes'][number];

const STATES = [
  { value: 'clean', text: 'clean' },
  { value: 'injured', text: 'injured' },
];

/** What became of the crops that were sown. */
export function Outcomes({ record, change, open, choices }: PartProps) {
  const dates = useDates();
  return (
    <Entries
      field="outcomes"
      entries={record.outcomes}
      noun="outcome"
      none="None yet. What became of a crop tells next time how well the odds hold on this ground."
      addText="Add an outcome"
      most={50}
      make={(): Outcome => ({
        on: today(),
        crop: nextPlan(record.plans, '')?.crop ?? choices.crops[0]?.name ?? 'wheat',
        state: 'clean',
      })}
      commit={(outcomes) => change({ outcomes })}
      forget={(prefix) => open.desk.forgetTyped(prefix)}
    >
      {(outcome, field, set) => (
        <>
          <DateBlank
            id={`blank-${field}.on`}
            field={`${field}.on`}
            value={outcome.on}
            echo={dates.withWeekday(outcome.on)}
            commit={(on) => on && set({ on })}
          />
          <CropBlank />
          <ChoiceBlank
            field={`${field}.state`}
            value={outcome.state}
            options={STATES}
            commit={(state) =>
              set(state === 'clean' ? { state, injuredPercent: undefined } : { state: 'injured' })
            }
          />
          {outcome.state === 'injured' && (
            <NumberBlank
              field={`${field}.injuredPercent`}
              unit="%"
              value={outcome.injuredPercent}
              min={0}
              max={100}
              optional
              commit={(injuredPercent) => set({ injuredPercent })}
            />
          )}
        </>
      )}
    </Entries>
  );
}
