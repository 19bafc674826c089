import { blankName } from '../../../src/schema/fieldNames.ts';
import { joinIsoDates } from '../units/dates.ts';
import { rainUnit } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { Blank, blankIds } from './Blank.tsx';
import { amountsText, type DayAmount, example, readAmounts } from './dayAmounts.ts';
import { useBlanks } from './FormContext.ts';
import { useBlank } from './useBlank.ts';

interface DayAmountsBlankProps {
  readonly field: string;
  /** The field’s own name where not given. */
  readonly label?: string;
  readonly amounts: readonly DayAmount[];
  readonly mostMm: number;
  readonly remark: string;
  readonly commit: (amounts: DayAmount[]) => void;
}

/** Water on days of its own, one day a line. */
export function DayAmountsBlank({
  field,
  label = blankName(field),
  amounts,
  mostMm,
  remark,
  commit,
}: DayAmountsBlankProps) {
  const { units } = useBlanks();
  const { style } = useDates();
  const { input, problem } = useBlank<DayAmount[]>({
    field,
    shown: amountsText(amounts, units, style),
    read: (text) => readAmounts(text, units, style, mostMm),
    commit,
  });
  const id = `blank-${field}`;
  const { onKeyDown: _, ...rest } = input;
  const unit = `${rainUnit(units)} a day`;
  return (
    <Blank
      id={id}
      label={label}
      unit={unit}
      problem={problem}
      remark={joinIsoDates(`${remark} One day a line, like ${example(units, style)}`)}
    >
      <textarea {...blankIds(id, { unit, remark, problem })} {...rest} rows={3} spellcheck={false} />
    </Blank>
  );
}
