import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { blankName } from '../../../src/schema/fieldNames.ts';
import { Blank, blankIds } from './Blank.tsx';
import { refusalOf, useBlanks } from './FormContext.ts';
import { useBlank } from './useBlank.ts';

/** One entry of a choice. */
export interface Option {
  readonly value: string;
  readonly text: string;
}

interface ChoiceBlankProps {
  readonly field: string;
  /** The field’s own name where not given. */
  readonly label?: ComponentChildren;
  readonly lead?: string;
  readonly value: string | undefined;
  readonly options: readonly Option[];
  /** What the last entry says that turns the choice into a blank to write in; absent where only the list counts. */
  readonly other?: string;
  readonly remark?: ComponentChildren;
  readonly commit: (value: string) => void;
}

const OTHER = '\u0000other';

/** A choice from a list, with room to write in what the list lacks. */
export function ChoiceBlank(props: ChoiceBlankProps) {
  const { field, label = blankName(field), lead, value = '', options, other, remark, commit } = props;
  const { refusal } = useBlanks();
  const [writing, setWriting] = useState(false);
  const listed = options.some((option) => option.value === value);
  const id = `blank-${field}`;
  const problem = refusalOf(refusal, field);
  if (writing || (!listed && value !== '')) {
    return <WrittenChoice {...props} id={id} back={() => setWriting(false)} />;
  }
  return (
    <Blank id={id} label={label} lead={lead} remark={remark} problem={problem}>
      <select
        {...blankIds(id, { remark, problem })}
        value={value}
        onChange={(event) => {
          if (event.currentTarget.value === OTHER) setWriting(true);
          else commit(event.currentTarget.value);
        }}
      >
        {value === '' && <option value="">choose…</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
        {other && <option value={OTHER}>{other}</option>}
      </select>
    </Blank>
  );
}

function WrittenChoice(props: ChoiceBlankProps & { id: string; back: () => void }) {
  const { id, field, label = blankName(field), lead, value = '', options, remark, commit, back } = props;
  const { input, problem } = useBlank<string>({
    field,
    shown: options.some((option) => option.value === value) ? '' : value,
    read: (text) =>
      text.trim() === '' ? { problem: 'Write a name here, or go back to the list.' } : { value: text.trim() },
    commit,
  });
  const { keepTyped } = useBlanks();
  return (
    <Blank
      id={id}
      label={label}
      lead={lead}
      remark={remark}
      problem={problem}
      after={
        <button
          type="button"
          class="small-button"
          onClick={() => {
            keepTyped(field, null);
            back();
            if (!options.some((option) => option.value === value)) commit(options[0].value);
          }}
        >
          list
        </button>
      }
    >
      <input
        {...blankIds(id, { remark, problem })}
        {...input}
        type="text"
        autocomplete="off"
        spellcheck={false}
      />
    </Blank>
  );
}
