import type { ComponentChildren } from 'preact';
import { blankName } from '../../../src/schema/fieldNames.ts';
import { type Quantity, shownNumber } from '../units/units.ts';
import { Blank, blankIds } from './Blank.tsx';
import { useBlanks } from './FormContext.ts';
import { readNumber } from './readNumber.ts';
import { useBlank } from './useBlank.ts';

interface NumberBlankProps {
  readonly field: string;
  /** The field’s own name where not given. */
  readonly label?: ComponentChildren;
  readonly lead?: string;
  readonly unit?: string;
  readonly quantity?: Quantity;
  readonly value: number | undefined;
  /** Value taken where the blank is empty. */
  readonly standard?: number;
  readonly min?: number;
  readonly max?: number;
  readonly aboveMin?: boolean;
  readonly whole?: boolean;
  readonly optional?: boolean;
  readonly remark?: ComponentChildren;
  readonly commit: (value: number | undefined) => void;
}

/** A number with its unit inside the frame; switching units converts what stands in it. */
export function NumberBlank(props: NumberBlankProps) {
  const {
    field,
    label = blankName(field),
    lead,
    unit,
    quantity = 'plain',
    value,
    standard,
    remark,
    commit,
  } = props;
  const { units } = useBlanks();
  const present = value ?? standard;
  const { input, problem } = useBlank<number | undefined>({
    field,
    shown:
      present === undefined
        ? ''
        : typeof present === 'number'
          ? shownNumber(present, quantity, units)
          : `${present}`,
    read: (text) =>
      readNumber(text, { ...props, quantity, units, optional: props.optional ?? standard !== undefined }),
    commit,
  });
  const id = `blank-${field}`;
  return (
    <Blank id={id} label={label} lead={lead} unit={unit} remark={remark} problem={problem}>
      <input
        {...blankIds(id, { unit, remark, problem })}
        {...input}
        type="text"
        inputMode="decimal"
        autocomplete="off"
      />
    </Blank>
  );
}
