import type { Choices, LabelEntry } from '../api/contract.ts';
import { Entries } from '../keep/Entries.tsx';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { sayFullDate } from '../question/calendar.ts';
import { DateBlank } from '../question/DateBlank.tsx';
import { NumberBlank } from '../question/NumberBlank.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import { doseUnit, type Units } from '../units/units.ts';
import { WaterBlanks } from './WaterBlanks.tsx';

type Active = LabelEntry['actives'][number];

interface LabelFormProps {
  readonly entry: LabelEntry;
  readonly change: (part: Partial<LabelEntry>) => void;
  readonly forget: (prefix: string) => void;
  readonly choices: Choices | null;
  readonly units: Units;
}

const named = (list: readonly { readonly name: string }[] | undefined) =>
  (list ?? []).map(({ name }) => ({ value: name, text: name }));

/** What a label says, in blanks. */
export function LabelForm({ entry, change, forget, choices, units }: LabelFormProps) {
  const unlike = (names: readonly string[], list: readonly { readonly name: string }[] | undefined) =>
    list?.find(({ name }) => !names.includes(name))?.name ?? '';
  return (
    <form class="field-form label-form" aria-label="The label" onSubmit={(event) => event.preventDefault()}>
      <div class="blank-grid">
        <TextBlank
          field="name"
          label="Product, as you call it"
          value={entry.name}
          most={120}
          needed="An entry needs a name."
          testId="label-name"
          commit={(name) => change({ name })}
        />
        <TextBlank
          field="labelVersion"
          label="Version or date printed on the label"
          value={entry.labelVersion}
          most={80}
          commit={(labelVersion) => change({ labelVersion })}
        />
        <DateBlank
          id="blank-enteredOn"
          field="enteredOn"
          label="Read off the label on"
          value={entry.enteredOn}
          echo={sayFullDate(entry.enteredOn)}
          commit={(enteredOn) => enteredOn && change({ enteredOn })}
        />
        <TextBlank
          field="note"
          label="Remark"
          value={entry.note}
          most={1000}
          rows={2}
          commit={(note) => change({ note })}
        />
      </div>
      <h2>Actives</h2>
      <Entries
        field="actives"
        entries={entry.actives}
        noun="active"
        none="A product has at least one active."
        addText="Add an active"
        most={6}
        make={(): Active => ({
          name: unlike(
            entry.actives.map(({ name }) => name),
            choices?.residuals,
          ),
        })}
        commit={(actives) => change({ actives })}
        forget={forget}
      >
        {(active, field, set) => (
          <>
            <ChoiceBlank
              field={`${field}.name`}
              label="Active ingredient"
              value={active.name}
              options={named(choices?.residuals)}
              other="another, written in…"
              commit={(name) => set({ name })}
            />
            <NumberBlank
              field={`${field}.rateGramsPerHa`}
              label="Active at the top label rate"
              unit={doseUnit(units)}
              quantity="rate"
              value={active.rateGramsPerHa}
              min={0}
              max={20_000}
              aboveMin
              optional
              commit={(rateGramsPerHa) => set({ rateGramsPerHa })}
            />
            <NumberBlank
              field={`${field}.halfLifeDays`}
              label="Field half-life, if you know better"
              unit="days"
              value={active.halfLifeDays}
              min={0}
              max={5000}
              aboveMin
              optional
              remark="Empty: the catalogue’s."
              commit={(halfLifeDays) => set({ halfLifeDays })}
            />
          </>
        )}
      </Entries>
      <h2>Intervals</h2>
      <Entries
        field="intervals"
        entries={entry.intervals}
        noun="crop"
        none="An entry has the interval of at least one crop."
        addText="Add a crop"
        most={60}
        make={() => ({
          crop: unlike(
            entry.intervals.map(({ crop }) => crop),
            choices?.crops,
          ),
          interval: entry.intervals.at(-1)?.interval ?? '12 months',
          clauses: [],
          conditions: '',
        })}
        commit={(intervals) => change({ intervals })}
        forget={forget}
      >
        {(interval, field, set) => (
          <>
            <ChoiceBlank
              field={`${field}.crop`}
              label="Rotation crop"
              value={interval.crop}
              options={named(choices?.crops)}
              other="another, written in…"
              commit={(crop) => set({ crop })}
            />
            <TextBlank
              field={`${field}.interval`}
              label="Rotation interval"
              value={interval.interval}
              most={60}
              needed="Write it like 9 months, or 1 month 15 days."
              commit={(text) => set({ interval: text })}
            />
            <TextBlank
              field={`${field}.conditions`}
              label="Conditions in the label’s words"
              value={interval.conditions}
              most={500}
              rows={2}
              remark="Shown in answers, not judged."
              commit={(conditions) => set({ conditions })}
            />
            <WaterBlanks
              field={`${field}.clauses`}
              clauses={interval.clauses}
              units={units}
              commit={(clauses) => set({ clauses })}
            />
          </>
        )}
      </Entries>
    </form>
  );
}
