import type { FieldRecord } from '../api/contract.ts';
import { Entries } from '../keep/Entries.tsx';
import { freeId } from '../keep/freeId.ts';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { OwnIntervalBlank, TreatmentBlanks } from '../question/sprayBlanks.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import { ZoneBlanks } from '../question/ZoneBlanks.tsx';
import { areaUnit } from '../units/units.ts';
import { emptyTreatment } from './emptyField.ts';
import { today } from './nextPlan.ts';
import type { PartProps } from './parts.ts';
import { RecordBlanks } from './RecordBlanks.tsx';

export type Treatment = FieldRecord['treatments'][number];

/** Everything that was sprayed on the field. */
export function Treatments({ record, change, open, choices, units }: PartProps) {
  return (
    <Entries
      field="treatments"
      entries={record.treatments}
      noun="treatment"
      none="Nothing is entered yet. The latest treatment before planting is the one asked about; earlier ones stand beside it."
      addText="Add a treatment"
      most={20}
      make={(): Treatment => ({
        ...emptyTreatment(
          freeId(
            'treatment',
            record.treatments.map(({ id }) => id),
          ),
          today(),
        ),
        residual: choices.residuals[0]?.name,
      })}
      commit={(treatments) => change({ treatments })}
      forget={(prefix) => open.desk.forgetTyped(prefix)}
    >
      {(treatment, field, set) => (
        <>
          <TreatmentBlanks dropped={{ intervals: [] }} />
          <IntervalBlanks {...{ treatment, field, set }} crops={record.plans.map(({ crop }) => crop)} />
          <NumberBlank
            field={`${field}.areaHa`}
            unit={areaUnit(units)}
            quantity="area"
            value={treatment.areaHa}
            min={0}
            max={100_000}
            aboveMin
            optional
            commit={(areaHa) => set({ areaHa })}
          />
          <ZoneBlanks />
          <RecordBlanks
            field={`${field}.record`}
            fieldId={record.id}
            treatmentId={treatment.id}
            record={treatment.record ?? {}}
            commit={(filled) => set({ record: filled })}
          />
        </>
      )}
    </Entries>
  );
}

interface IntervalBlanksProps {
  readonly treatment: Treatment;
  readonly field: string;
  readonly set: (part: Partial<Treatment>) => void;
  readonly crops: readonly string[];
}

/** What the label says before each planned crop: a figure read for one of them says nothing of another. */
function IntervalBlanks({ treatment, field, set, crops }: IntervalBlanksProps) {
  const named = [...new Set([...crops, ...treatment.intervals.map(({ crop }) => crop)])];
  return (
    <>
      {named.map((crop) => (
        <TextBlank
          key={crop}
          field={`${field}.intervals.${crop}`}
          label={`Interval on your label, before ${crop}`}
          value={treatment.intervals.find((one) => one.crop === crop)?.interval}
          most={60}
          remark="Such as 9 months. Empty: the catalogue’s, or that of your label entry."
          commit={(interval) =>
            set({
              intervals: [
                ...treatment.intervals.filter((one) => one.crop !== crop),
                ...(interval === '' ? [] : [{ crop, interval }]),
              ],
            })
          }
        />
      ))}
      {(named.length === 0 || treatment.interval !== undefined) && (
        <OwnIntervalBlank label="Interval on your label, before any other crop" />
      )}
    </>
  );
}
