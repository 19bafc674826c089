import { Entries } from '../keep/Entries.tsx';
import { useForm } from './FormContext.ts';
import { OwnIntervalBlank, TreatmentBlanks } from './sprayBlanks.tsx';
import type { OtherTreatment } from './treatmentText.ts';

const MOST = 10;

/** Other treatments of the field: residues of one group add up, of different groups the worst governs. */
export function OtherTreatmentBlanks() {
  const { question, choices, change, forgetTyped } = useForm();
  return (
    <Entries
      field="otherTreatments"
      entries={question.otherTreatments ?? []}
      noun="other treatment"
      none="None beside the one above. Residues of one mode-of-action group add up; of different groups the worst governs."
      addText="Add another treatment"
      most={MOST}
      make={(): OtherTreatment => ({
        appliedOn: question.appliedOn,
        residual: choices.residuals.find(({ name }) => name !== question.residual)?.name,
      })}
      commit={(otherTreatments) => change({ otherTreatments })}
      forget={forgetTyped}
    >
      {() => (
        <>
          <TreatmentBlanks />
          <OwnIntervalBlank />
        </>
      )}
    </Entries>
  );
}
