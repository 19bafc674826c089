import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { SubjectOf } from '../question/subject.tsx';
import { AskOnce } from './AskOnce.tsx';

interface EntriesProps<T> {
  /** Name of the list in the record; the blanks of its entries are named after it. */
  readonly field: string;
  readonly entries: readonly T[];
  /** What one entry is called, such as "treatment". */
  readonly noun: string;
  readonly none: string;
  readonly addText: string;
  readonly most: number;
  readonly make: () => T;
  readonly commit: (entries: T[]) => void;
  /** Forgets texts that could not be read, when entries move up. */
  readonly forget: (prefix: string) => void;
  readonly children: (entry: T, field: string, set: (part: Partial<T>) => void) => ComponentChildren;
}

interface OneEntryProps<T> extends Pick<EntriesProps<T>, 'children'> {
  readonly entry: T;
  readonly field: string;
  readonly set: (part: Partial<T>) => void;
}

/** One entry, the subject of its blanks. */
function OneEntry<T extends object>({ entry, field, set, children }: OneEntryProps<T>) {
  return (
    <SubjectOf of={entry} set={set} field={field}>
      {children(entry, field, set)}
    </SubjectOf>
  );
}

/** A list of entries, each with its blanks; one more at the end, and each may go. */
export function Entries<T extends object>(props: EntriesProps<T>) {
  const { field, entries, noun, none, addText, most, make, commit, forget, children } = props;
  const add = useRef<HTMLButtonElement>(null);
  return (
    <div class="entries" data-testid={`${field}-entries`}>
      {entries.length === 0 && <p class="blank-remark">{none}</p>}
      {entries.map((entry, index) => (
        <fieldset
          class="blank-set entry"
          key={'id' in entry ? `${entry.id}` : index}
          data-testid={`${field}-entry`}
        >
          <legend>
            {noun[0].toUpperCase() + noun.slice(1)} {index + 1}
          </legend>
          <div class="blank-grid">
            <OneEntry
              entry={entry}
              field={`${field}.${index}`}
              set={(part) =>
                commit(entries.map((other, at) => (at === index ? { ...other, ...part } : other)))
              }
            >
              {children}
            </OneEntry>
          </div>
          <AskOnce
            text={`Remove ${noun} ${index + 1}`}
            question={`Remove ${noun} ${index + 1}? Undo brings it back.`}
            yes="Remove it"
            testId={`${field}-remove`}
            act={() => {
              forget(`${field}.`);
              commit(entries.filter((_, at) => at !== index));
              add.current?.focus();
            }}
          />
        </fieldset>
      ))}
      {entries.length < most && (
        <button
          ref={add}
          type="button"
          class="small-button"
          data-testid={`${field}-add`}
          onClick={() => commit([...entries, make()])}
        >
          {addText}
        </button>
      )}
    </div>
  );
}
