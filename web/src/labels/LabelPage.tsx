import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { Choices, LabelEntry } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { AskOnce } from '../keep/AskOnce.tsx';
import { ConflictNote } from '../keep/ConflictNote.tsx';
import { KeepLine } from '../keep/KeepLine.tsx';
import { tellRemoved } from '../keep/lastRemoved.ts';
import { useRecord } from '../keep/useRecord.ts';
import { FormContext } from '../question/FormContext.ts';
import { go } from '../shell/places.ts';
import type { Units } from '../units/units.ts';
import { LabelForm } from './LabelForm.tsx';

/** Words for the parts of an entry. */
const PART_NAMES = {
  name: 'Product',
  actives: 'Actives, rates in g/ha',
  intervals: 'Intervals',
  labelVersion: 'Version of the label',
  enteredOn: 'Read on',
  note: 'Remark',
};

/** One product as its label has it, to be changed. */
export function LabelPage({ id, units }: { id: string; units: Units }) {
  const open = useRecord<LabelEntry>('/api/labels', id);
  const choices = useFetched<Choices>('/api/choices');
  const name = open?.record?.name;
  useEffect(() => {
    document.title = `${name ?? 'A label'} · Drywake`;
  }, [name]);
  const { kept, record } = open ?? { kept: null, record: null };
  if (open === null || kept === null || record === null) {
    return (
      <main class="lone fields-place">
        <p class="back">
          <a href="/labels">Your labels</a>
        </p>
        {open?.gone ? (
          <GoneNote retry={() => open.desk.again()} />
        ) : open?.refusal ? (
          <ProblemNote problem={open.refusal} />
        ) : (
          <p>Reading the label…</p>
        )}
      </main>
    );
  }
  const { desk } = open;
  async function remove(): Promise<void> {
    const removed = await desk.remove();
    if (removed === null) return;
    tellRemoved('/api/labels', removed);
    go('/labels');
  }
  return (
    <main class="lone fields-place field-page" data-testid="label-page">
      <p class="back">
        <a href="/labels">Your labels</a>
      </p>
      <h1 class="place-title">{record.name}</h1>
      <p class="lede">{record.actives.map(({ name: active }) => active).join(' + ')}</p>
      <KeepLine open={open} />
      <ConflictNote open={open} noun="label entry" names={PART_NAMES} />
      {kept.removed ? (
        <p class="note">This entry is removed; “Bring the change back” brings it back.</p>
      ) : (
        <>
          <FormContext.Provider
            value={{
              units,
              refusal: open.refusal,
              typed: open.typed,
              keepTyped: (field, text) => desk.keepTyped(field, text),
            }}
          >
            <LabelForm
              entry={record}
              change={(part) => desk.change(part)}
              forget={(prefix) => desk.forgetTyped(prefix)}
              choices={choices.data}
              units={units}
            />
          </FormContext.Provider>
          <p class="do-row">
            <AskOnce
              text="Remove this entry"
              question={`Remove ${record.name}? It can be brought back.`}
              yes="Remove the entry"
              testId="remove-label"
              act={() => void remove()}
            />
          </p>
        </>
      )}
    </main>
  );
}
