import type { ComponentChildren } from 'preact';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { Choices, LabelList } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { FormContext, NO_CHOICES } from '../question/FormContext.ts';
import { go } from '../shell/places.ts';
import { useTitle } from '../shell/useTitle.ts';
import type { Units } from '../units/units.ts';
import { useWorded } from '../units/useWorded.ts';
import { AskOnce } from './AskOnce.tsx';
import { ConflictNote } from './ConflictNote.tsx';
import { KeepLine } from './KeepLine.tsx';
import { tellRemoved } from './lastRemoved.ts';
import type { Kept, ShelfPath } from './shelf.ts';
import { type OpenRecord, useRecord } from './useRecord.ts';

/** What the form of a kept record is given. */
export interface KeptForm<T extends { readonly id: string }> {
  readonly open: OpenRecord<T>;
  readonly kept: Kept<T>;
  readonly record: T;
  readonly change: (part: Partial<T>) => void;
  readonly choices: Choices;
  readonly units: Units;
}

interface KeptPageProps<T extends { readonly id: string }> {
  readonly shelf: ShelfPath;
  readonly id: string;
  readonly units: Units;
  /** What a record is called, such as "field". */
  readonly noun: string;
  /** The list that it belongs to. */
  readonly list: { readonly path: string; readonly title: string };
  /** Words for the parts of the record. */
  readonly names: Readonly<Record<string, string>>;
  readonly lede: (record: T) => string;
  readonly removed: ComponentChildren;
  readonly testIds: { readonly page: string; readonly remove: string };
  readonly children: (form: KeptForm<T>) => ComponentChildren;
}

/** One kept record, to be changed: what is said of it, how it stands with the server, its form, and its removal. */
export function KeptPage<T extends { readonly id: string; readonly name: string }>(props: KeptPageProps<T>) {
  const { shelf, id, units, noun, list, names, lede, removed, testIds, children } = props;
  const open = useRecord<T>(shelf, id);
  const choices = useFetched<Choices>('/api/choices').data ?? NO_CHOICES;
  const labels = useFetched<LabelList>('/api/labels').data?.labels ?? [];
  useTitle(open?.record?.name ?? `A ${noun}`);
  const back = (
    <p class="back">
      <a href={list.path}>{list.title}</a>
    </p>
  );
  const { kept, record } = open ?? { kept: null, record: null };
  const worded = useWorded();
  if (open === null || kept === null || record === null) {
    return (
      <main class="lone fields-place">
        {back}
        {open?.gone ? (
          <GoneNote retry={() => open.desk.again()} />
        ) : open?.refusal ? (
          <ProblemNote problem={open.refusal} />
        ) : (
          <p>Reading the {noun}…</p>
        )}
      </main>
    );
  }
  const { desk, typed } = open;
  const refusal = open.refusal && worded(open.refusal);
  async function remove(): Promise<void> {
    const gone = await desk.remove();
    if (gone === null) return;
    tellRemoved(shelf, gone);
    go(list.path);
  }
  const about = lede(record);
  return (
    <main class="lone fields-place field-page" data-testid={testIds.page}>
      {back}
      <h1 class="place-title">{record.name}</h1>
      {about !== '' && <p class="lede">{about}</p>}
      <KeepLine open={open} />
      <ConflictNote open={open} noun={noun} names={names} />
      {kept.removed ? (
        removed
      ) : (
        <>
          <FormContext.Provider
            value={{
              ...{ units, refusal, typed, choices, labels },
              keepTyped: (field, text) => desk.keepTyped(field, text),
              forgetTyped: (prefix) => desk.forgetTyped(prefix),
            }}
          >
            {children({ open, kept, record, change: (part) => desk.change(part), choices, units })}
          </FormContext.Provider>
          <p class="do-row">
            <AskOnce
              text={`Remove this ${noun}`}
              question={`Remove ${record.name}? It can be brought back.`}
              yes={`Remove the ${noun}`}
              testId={testIds.remove}
              act={() => void remove()}
            />
          </p>
        </>
      )}
    </main>
  );
}
