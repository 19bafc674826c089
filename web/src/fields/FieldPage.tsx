import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { Choices, FieldRecord, LabelList } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { AskOnce } from '../keep/AskOnce.tsx';
import { ConflictNote } from '../keep/ConflictNote.tsx';
import { KeepLine } from '../keep/KeepLine.tsx';
import { tellRemoved } from '../keep/lastRemoved.ts';
import { useRecord } from '../keep/useRecord.ts';
import { FormContext } from '../question/FormContext.ts';
import { go } from '../shell/places.ts';
import { areaText, type Units } from '../units/units.ts';
import { FieldForm } from './FieldForm.tsx';
import { PlanAnswers } from './PlanAnswers.tsx';
import { PART_NAMES } from './parts.ts';

/** One field: how its next crops stand, and everything that is known of it, to be changed. */
export function FieldPage({ id, units }: { id: string; units: Units }) {
  const open = useRecord<FieldRecord>('/api/fields', id);
  const choices = useFetched<Choices>('/api/choices');
  const labels = useFetched<LabelList>('/api/labels');
  const name = open?.record?.name;
  useEffect(() => {
    document.title = `${name ?? 'A field'} · Drywake`;
  }, [name]);
  const { kept, record } = open ?? { kept: null, record: null };
  if (open === null || kept === null || record === null) {
    return (
      <main class="lone fields-place">
        <p class="back">
          <a href="/fields">All fields</a>
        </p>
        {open?.gone ? (
          <GoneNote retry={() => open.desk.again()} />
        ) : open?.refusal ? (
          <ProblemNote problem={open.refusal} />
        ) : (
          <p>Reading the field…</p>
        )}
      </main>
    );
  }
  const { desk } = open;
  async function remove(): Promise<void> {
    const removed = await desk.remove();
    if (removed === null) return;
    tellRemoved('/api/fields', removed);
    go('/fields');
  }
  const about = [record.farm, record.areaHa === null ? '' : areaText(record.areaHa, units)].filter(Boolean);
  return (
    <main class="lone fields-place field-page" data-testid="field-page">
      <p class="back">
        <a href="/fields">All fields</a>
      </p>
      <h1 class="place-title">{record.name}</h1>
      {about.length > 0 && <p class="lede">{about.join(', ')}</p>}
      <KeepLine open={open} />
      <ConflictNote open={open} noun="field" names={PART_NAMES} />
      {kept.removed ? (
        <div class="note">
          <p class="note-title">This field is removed.</p>
          <p>“Bring the change back”, or a look under the removed fields of the list, brings it back.</p>
        </div>
      ) : (
        <>
          <PlanAnswers id={id} kept={kept} units={units} />
          <FormContext.Provider
            value={{
              units,
              refusal: open.refusal,
              typed: open.typed,
              keepTyped: (field, text) => desk.keepTyped(field, text),
            }}
          >
            <FieldForm
              open={open}
              record={record}
              change={(part) => desk.change(part)}
              choices={choices.data}
              labels={labels.data?.labels ?? []}
              units={units}
            />
          </FormContext.Provider>
          <p class="do-row">
            <AskOnce
              text="Remove this field"
              question={`Remove ${record.name}? It can be brought back.`}
              yes="Remove the field"
              testId="remove-field"
              act={() => void remove()}
            />
          </p>
        </>
      )}
    </main>
  );
}
