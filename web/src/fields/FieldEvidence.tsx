import type { Choices } from '../api/contract.ts';
import { EvidenceBlanks } from '../question/EvidenceBlanks.tsx';
import { FormContext, useBlanks } from '../question/FormContext.ts';
import { nextPlan, today } from './nextPlan.ts';
import type { PartProps } from './parts.ts';

const NO_CHOICES: Choices = { residuals: [], crops: [], soilClasses: [], stations: [] };

/** Soil tests and bioassays, in the blanks of the question: what is found on the field stands in every one of its questions. */
export function FieldEvidence({ record, change }: PartProps) {
  const blanks = useBlanks();
  const plan = nextPlan(record.plans, today());
  const question = {
    station: record.station ?? '',
    residual: record.treatments[0]?.residual ?? '',
    crop: plan?.crop ?? '',
    plantOn: plan?.plantOn ?? today(),
    appliedOn: today(),
    evidence: record.evidence,
  };
  return (
    <FormContext.Provider
      value={{
        ...blanks,
        question,
        choices: NO_CHOICES,
        change: ({ evidence }) => change({ evidence: (evidence ?? []) as typeof record.evidence }),
      }}
    >
      <EvidenceBlanks />
    </FormContext.Provider>
  );
}
