import { useLayoutEffect, useState } from 'preact/hooks';
import { refusalOf, useBlanks } from './FormContext.ts';
import type { Reading } from './parseDate.ts';

/** A blank’s field name, its present text and how a typed text is read and taken over. */
export interface BlankRule<T> {
  readonly field: string;
  /** Name under which a text that cannot be read is kept, where one field has two blanks. */
  readonly draft?: string;
  /** The text of the present value. */
  readonly shown: string;
  readonly read: (text: string) => Reading<T>;
  readonly commit: (value: T) => void;
}

/**
 * The life of a blank: typed text is read when the blank is left, never per key; text that cannot be read
 * stays as typed, also over a reload, with the reason beside it.
 */
export function useBlank<T>({ field, draft = field, shown, read, commit }: BlankRule<T>) {
  const { typed, keepTyped, refusal } = useBlanks();
  const kept = typed[draft];
  const [editing, setEditing] = useState<string | null>(kept ?? null);
  const reading = kept === undefined ? null : read(kept);

  // A new value from elsewhere (marker, address, units) ends what was being typed, and so does forgetting a kept text.
  // Before the next event: what is typed into a blank just made must not be taken for the value before.
  useLayoutEffect(() => {
    if (kept === undefined) setEditing(null);
  }, [shown, kept]);

  function leave(): void {
    if (editing === null) return;
    if (editing === shown) {
      setEditing(null);
      keepTyped(draft, null);
      return;
    }
    const result = read(editing);
    if ('problem' in result) {
      keepTyped(draft, editing);
      return;
    }
    keepTyped(draft, null);
    setEditing(null);
    commit(result.value);
  }

  const unreadable = reading && 'problem' in reading ? reading.problem : null;
  return {
    problem: unreadable ?? refusalOf(refusal, field),
    /** Whether the text that stands in the blank is none of its value. */
    unread: unreadable !== null,
    input: {
      value: editing ?? shown,
      onInput: (event: { currentTarget: { value: string } }) => setEditing(event.currentTarget.value),
      onBlur: leave,
      onKeyDown: (event: KeyboardEvent) => {
        if (event.key === 'Enter') {
          event.preventDefault();
          leave();
        }
        if (event.key === 'Escape' && editing !== null) {
          event.stopPropagation();
          setEditing(null);
          keepTyped(draft, null);
        }
      },
    },
  };
}
