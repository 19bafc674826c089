import type { Choices } from '../api/contract.ts';
import { Entries } from '../keep/Entries.tsx';
import { freeId } from '../keep/freeId.ts';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { daysBetween, sayWeekday } from '../question/calendar.ts';
import { DateBlank } from '../question/DateBlank.tsx';
import { QUESTION_DEFAULTS } from '../question/defaults.ts';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { Term } from '../words/Term.tsx';
import { type FieldPlan, today } from './nextPlan.ts';
import type { PartProps } from './parts.ts';

const USES = [
  { value: 'harvested', text: 'harvested' },
  { value: 'grazed', text: 'grazed' },
  { value: 'cover only', text: 'a cover crop, neither' },
];

/** The crops that may follow, each with its date. */
export function Plans({ record, change, open, choices }: PartProps & { choices: Choices | null }) {
  const sprayed = record.treatments.map(({ appliedOn }) => appliedOn).sort();
  return (
    <Entries
      field="plans"
      entries={record.plans}
      noun="planned crop"
      none="No crop is planned yet. Each one gets an answer of its own."
      addText="Add a planned crop"
      most={20}
      make={(): FieldPlan => ({
        id: freeId(
          'crop',
          record.plans.map(({ id }) => id),
        ),
        crop: choices?.crops[0]?.name ?? 'wheat',
        plantOn: [sprayed.at(-1) ?? '', today()].sort()[1],
        oddsLimit: QUESTION_DEFAULTS.oddsLimit,
      })}
      commit={(plans) => change({ plans })}
      forget={(prefix) => open.desk.forgetTyped(prefix)}
    >
      {(plan, field, set) => {
        const last = sprayed.filter((appliedOn) => appliedOn <= plan.plantOn).at(-1);
        return (
          <>
            <ChoiceBlank
              field={`${field}.crop`}
              label="Next crop"
              value={plan.crop}
              options={(choices?.crops ?? []).map(({ name }) => ({ value: name, text: name }))}
              other="another, written in…"
              commit={(crop) => set({ crop })}
            />
            <DateBlank
              id={`blank-${field}.plantOn`}
              field={`${field}.plantOn`}
              label="Planting date"
              value={plan.plantOn}
              echo={
                last === undefined
                  ? sayWeekday(plan.plantOn)
                  : `${sayWeekday(plan.plantOn)}, ${daysBetween(last, plan.plantOn)} days after spraying`
              }
              commit={(plantOn) => plantOn && set({ plantOn })}
            />
            <ChoiceBlank
              field={`${field}.standUse`}
              label="Use of the stand"
              value={plan.standUse ?? 'harvested'}
              options={USES}
              commit={(use) =>
                set({ standUse: use === 'harvested' ? undefined : (use as FieldPlan['standUse']) })
              }
            />
            <NumberBlank
              field={`${field}.oddsLimit`}
              label="Odds limit"
              unit="in 20"
              quantity="twentieths"
              value={plan.oddsLimit}
              min={0}
              max={0.999}
              aboveMin
              remark={<Term name="odds limit">What is an odds limit?</Term>}
              commit={(oddsLimit) => set({ oddsLimit: oddsLimit ?? QUESTION_DEFAULTS.oddsLimit })}
            />
          </>
        );
      }}
    </Entries>
  );
}
