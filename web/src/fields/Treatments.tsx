import type { Choices, FieldRecord, KeptLabel } from '../api/contract.ts';
import { Entries } from '../keep/Entries.tsx';
import { freeId } from '../keep/freeId.ts';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { sayFullDate } from '../question/calendar.ts';
import { DateBlank } from '../question/DateBlank.tsx';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import { areaUnit, type Units } from '../units/units.ts';
import { today } from './nextPlan.ts';
import type { PartProps } from './parts.ts';
import { RecordBlanks } from './RecordBlanks.tsx';
import { ZoneBlanks } from './ZoneBlanks.tsx';

export type Treatment = FieldRecord['treatments'][number];

interface TreatmentsProps extends PartProps {
  readonly choices: Choices | null;
  readonly labels: readonly KeptLabel[];
  readonly units: Units;
}

/** Everything that was sprayed on the field. */
export function Treatments({ record, change, open, choices, labels, units }: TreatmentsProps) {
  return (
    <Entries
      field="treatments"
      entries={record.treatments}
      noun="treatment"
      none="Nothing is entered yet. The latest treatment before planting is the one asked about; earlier ones stand beside it."
      addText="Add a treatment"
      most={20}
      make={() => newTreatment(record, choices)}
      commit={(treatments) => change({ treatments })}
      forget={(prefix) => open.desk.forgetTyped(prefix)}
    >
      {(treatment, field, set) => (
        <TreatmentBlanks {...{ treatment, field, set, choices, labels, units }} fieldId={record.id} />
      )}
    </Entries>
  );
}

const newTreatment = ({ treatments }: FieldRecord, choices: Choices | null): Treatment => ({
  id: freeId(
    'treatment',
    treatments.map(({ id }) => id),
  ),
  appliedOn: today(),
  residual: choices?.residuals[0]?.name,
  rateFraction: 1,
  overlapFactor: 1,
  canopyFraction: 0,
  zones: [],
});

interface TreatmentBlanksProps {
  readonly treatment: Treatment;
  readonly field: string;
  readonly fieldId: string;
  readonly set: (part: Partial<Treatment>) => void;
  readonly choices: Choices | null;
  readonly labels: readonly KeptLabel[];
  readonly units: Units;
}

const OWN = 'label:';

function TreatmentBlanks({ treatment, field, fieldId, set, choices, labels, units }: TreatmentBlanksProps) {
  const own = labels.find(({ entry }) => entry.id === treatment.labelEntry);
  return (
    <>
      <ChoiceBlank
        field={`${field}.residual`}
        label="Residual, or a product of your labels"
        value={treatment.labelEntry === undefined ? treatment.residual : OWN + treatment.labelEntry}
        options={[
          ...(choices?.residuals ?? []).map(({ name }) => ({ value: name, text: name })),
          ...labels.map(({ entry }) => ({ value: OWN + entry.id, text: `your label: ${entry.name}` })),
          ...(treatment.labelEntry !== undefined && own === undefined
            ? [{ value: OWN + treatment.labelEntry, text: `your label: ${treatment.labelEntry}` }]
            : []),
        ]}
        other="another, written in…"
        remark={own && `${own.entry.actives.map(({ name }) => name).join(' + ')}; its intervals count.`}
        commit={(chosen) => set(chosenProduct(chosen, labels))}
      />
      <DateBlank
        id={`blank-${field}.appliedOn`}
        field={`${field}.appliedOn`}
        label="Date of spraying"
        value={treatment.appliedOn}
        echo={sayFullDate(treatment.appliedOn)}
        commit={(appliedOn) => appliedOn && set({ appliedOn })}
      />
      <NumberBlank
        field={`${field}.rateFraction`}
        label="Rate"
        unit="% of the top label rate"
        quantity="fraction"
        value={treatment.rateFraction}
        min={0}
        max={10}
        aboveMin
        commit={(rateFraction) => set({ rateFraction: rateFraction ?? 1 })}
      />
      <NumberBlank
        field={`${field}.overlapFactor`}
        label="Overlap over the whole field"
        unit="times the dose"
        value={treatment.overlapFactor}
        min={1}
        max={5}
        commit={(overlapFactor) => set({ overlapFactor: overlapFactor ?? 1 })}
      />
      <NumberBlank
        field={`${field}.canopyFraction`}
        label="Spray caught by green leaves"
        unit="%"
        quantity="fraction"
        value={treatment.canopyFraction}
        min={0}
        max={1}
        remark="Bare ground 0, a nearly closed canopy 80 and more."
        commit={(canopyFraction) => set({ canopyFraction: canopyFraction ?? 0 })}
      />
      <TextBlank
        field={`${field}.interval`}
        label="Rotation interval on your label"
        value={treatment.interval}
        most={60}
        remark="Empty: the catalogue’s, or that of your label entry."
        commit={(interval) => set({ interval: interval === '' ? undefined : interval })}
      />
      <NumberBlank
        field={`${field}.halfLifeDays`}
        label="Field half-life, if you know better"
        unit="days"
        value={treatment.halfLifeDays}
        min={0}
        max={5000}
        aboveMin
        optional
        commit={(halfLifeDays) => set({ halfLifeDays })}
      />
      <NumberBlank
        field={`${field}.areaHa`}
        label="Area treated, if not the whole field"
        unit={areaUnit(units)}
        quantity="area"
        value={treatment.areaHa}
        min={0}
        max={100_000}
        aboveMin
        optional
        commit={(areaHa) => set({ areaHa })}
      />
      <ZoneBlanks field={`${field}.zones`} zones={treatment.zones} commit={(zones) => set({ zones })} />
      <RecordBlanks
        field={`${field}.record`}
        fieldId={fieldId}
        treatmentId={treatment.id}
        record={treatment.record ?? {}}
        commit={(record) => set({ record })}
      />
    </>
  );
}

/** An active of the catalogue, or an own label entry with its first active beside it. */
function chosenProduct(chosen: string, labels: readonly KeptLabel[]): Partial<Treatment> {
  if (!chosen.startsWith(OWN)) return { residual: chosen, labelEntry: undefined };
  const id = chosen.slice(OWN.length);
  const entry = labels.find((label) => label.entry.id === id)?.entry;
  return { residual: entry?.actives[0]?.name, labelEntry: id };
}
