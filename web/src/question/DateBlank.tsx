import type { ComponentChildren } from 'preact';
import { blankName } from '../../../src/schema/fieldNames.ts';
import { typedDates } from '../units/dates.ts';
import { useDates } from '../units/useDates.ts';
import { Blank, blankIds } from './Blank.tsx';
import { parseDate } from './parseDate.ts';
import { useBlank } from './useBlank.ts';

interface DateBlankProps {
  /** Id of the control; the field it fills may have other controls. */
  readonly id: string;
  readonly field: string;
  readonly draft?: string;
  /** The field’s own name where not given. */
  readonly label?: string;
  readonly lead?: string;
  readonly value: string | undefined;
  readonly optional?: boolean;
  readonly commit: (isoDate: string | undefined) => void;
  /** Says the date back in full, so that no reading of it stays unseen. */
  readonly echo?: ComponentChildren;
  readonly testId?: string;
  readonly before?: ComponentChildren;
  readonly after?: ComponentChildren;
}

/** A date as text, said back in full below. */
export function DateBlank(props: DateBlankProps) {
  const {
    id,
    field,
    draft,
    label = blankName(field),
    lead,
    value,
    optional,
    commit,
    echo,
    testId,
    before,
    after,
  } = props;
  const { style } = useDates();
  const { input, problem, unread } = useBlank<string | undefined>({
    field,
    draft,
    shown: value ? typedDates(style).full(value) : '',
    read: (text) => (optional && text.trim() === '' ? { value: undefined } : parseDate(text, style)),
    commit,
  });
  // The day of the last good date would be read as that of the text above it.
  const remark = unread ? undefined : echo;
  return (
    <Blank id={id} label={label} lead={lead} remark={remark} problem={problem} before={before} after={after}>
      <input
        {...blankIds(id, { remark, problem })}
        {...input}
        type="text"
        inputMode="text"
        autocomplete="off"
        spellcheck={false}
        data-testid={testId}
      />
    </Blank>
  );
}
