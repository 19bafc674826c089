import { Entries } from '../keep/Entries.tsx';
import { freeId } from '../keep/freeId.ts';
import { QUESTION_DEFAULTS } from '../question/defaults.ts';
import { CropBlank, OddsLimitBlank, PlantOnBlank, StandUseBlank } from '../question/sharedBlanks.tsx';
import { type FieldPlan, today } from './nextPlan.ts';
import type { PartProps } from './parts.ts';

/** The crops that may follow, each with its date. */
export function Plans({ record, change, open, choices }: PartProps) {
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
        crop: choices.crops[0]?.name ?? 'wheat',
        plantOn: [sprayed.at(-1) ?? '', today()].sort()[1],
        oddsLimit: QUESTION_DEFAULTS.oddsLimit,
      })}
      commit={(plans) => change({ plans })}
      forget={(prefix) => open.desk.forgetTyped(prefix)}
    >
      {(plan) => {
        const last = sprayed.filter((appliedOn) => appliedOn <= plan.plantOn).at(-1);
        return (
          <>
            <CropBlank />
            <PlantOnBlank appliedOn={last} />
            <StandUseBlank />
            <OddsLimitBlank />
          </>
        );
      }}
    </Entries>
  );
}
