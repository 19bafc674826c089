import type { ComponentChildren } from 'preact';
import { blankName } from '../../../src/schema/fieldNames.ts';
import { Blank, blankIds } from './Blank.tsx';
import { useBlank } from './useBlank.ts';

interface TextBlankProps {
  readonly field: string;
  /** The field’s own name where not given. */
  readonly label?: ComponentChildren;
  readonly value: string | undefined;
  readonly most: number;
  /** What is said where the blank is left empty; absent where it may be. */
  readonly needed?: string;
  /** Lines to write on; one where not given. */
  readonly rows?: number;
  readonly remark?: ComponentChildren;
  readonly testId?: string;
  readonly commit: (value: string) => void;
}

/** Words, on one line or several. */
export function TextBlank(props: TextBlankProps) {
  const { field, label = blankName(field), value = '', most, needed, rows, remark, testId, commit } = props;
  const { input, problem } = useBlank<string>({
    field,
    shown: value,
    read: (text) => {
      const clean = text.trim();
      if (clean === '' && needed !== undefined) return { problem: needed };
      if (clean.length > most) {
        return { problem: `This has ${clean.length} characters; ${most} can be kept.` };
      }
      return { value: clean };
    },
    commit,
  });
  const id = `blank-${field}`;
  const shared = { ...blankIds(id, { remark, problem }), 'data-testid': testId };
  const { onKeyDown: _, ...multiline } = input;
  return (
    <Blank id={id} label={label} remark={remark} problem={problem}>
      {rows === undefined ? (
        <input {...shared} {...input} type="text" autocomplete="off" />
      ) : (
        <textarea {...shared} {...multiline} rows={rows} />
      )}
    </Blank>
  );
}
