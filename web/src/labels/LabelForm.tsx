import type { LabelEntry } from '../api/contract.ts';
import { Entries } from '../keep/Entries.tsx';
import type { KeptForm } from '../keep/KeptPage.tsx';
import { ChoiceBlank } from '../question/ChoiceBlank.tsx';
import { DateBlank } from '../question/DateBlank.tsx';
import { CropBlank } from '../question/sharedBlanks.tsx';
import { HalfLifeBlank, RateGramsBlank } from '../question/sprayBlanks.tsx';
import { TextBlank } from '../question/TextBlank.tsx';
import { useDates } from '../units/useDates.ts';
import { ClauseBlanks } from './ClauseBlanks.tsx';

type Active = LabelEntry['actives'][number];

const named = (list: readonly { readonly name: string }[]) =>
  list.map(({ name }) => ({ value: name, text: name }));

/** What a label says, in blanks. */
export function LabelForm({ record: entry, change, open, choices }: KeptForm<LabelEntry>) {
  const dates = useDates();
  const forget = (prefix: string) => open.desk.forgetTyped(prefix);
  const unlike = (names: readonly string[], list: readonly { readonly name: string }[]) =>
    list.find(({ name }) => !names.includes(name))?.name ?? '';
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
          value={entry.labelVersion}
          most={80}
          commit={(labelVersion) => change({ labelVersion })}
        />
        <DateBlank
          id="blank-enteredOn"
          field="enteredOn"
          value={entry.enteredOn}
          echo={dates.withWeekday(entry.enteredOn)}
          commit={(enteredOn) => enteredOn && change({ enteredOn })}
        />
        <TextBlank field="note" value={entry.note} most={1000} rows={2} commit={(note) => change({ note })} />
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
            choices.residuals,
          ),
        })}
        commit={(actives) => change({ actives })}
        forget={forget}
      >
        {(active, field, set) => (
          <>
            <ChoiceBlank
              field={`${field}.name`}
              value={active.name}
              options={named(choices.residuals)}
              other="another, written in…"
              commit={(name) => set({ name })}
            />
            <RateGramsBlank top />
            <HalfLifeBlank />
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
            choices.crops,
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
            <CropBlank />
            <TextBlank
              field={`${field}.interval`}
              value={interval.interval}
              most={60}
              needed="Write it like 9 months, or 1 month 15 days."
              commit={(text) => set({ interval: text })}
            />
            <TextBlank
              field={`${field}.foodFeedInterval`}
              value={interval.foodFeedInterval}
              most={60}
              remark="Only where the label gives it apart from the crop’s own safety; such as 12 months."
              commit={(text) => set({ foodFeedInterval: text === '' ? undefined : text })}
            />
            <TextBlank
              field={`${field}.conditions`}
              value={interval.conditions}
              most={500}
              rows={2}
              remark="Shown in answers, not judged."
              commit={(conditions) => set({ conditions })}
            />
            <ClauseBlanks
              field={`${field}.clauses`}
              clauses={interval.clauses}
              commit={(clauses) => set({ clauses })}
              forget={forget}
            />
          </>
        )}
      </Entries>
    </form>
  );
}
