import { MissingDataError } from '../errors.ts';
import type { Interval } from '../model/calendar/interval.ts';
import type { Active, Catalogue, Crop, IntervalRow } from '../schema/catalogue.ts';
import { HALF_MONTH_DAYS } from './parseInterval.ts';

/** The catalogue's label interval for a pair, with all that stands behind it. */
export interface ChosenInterval extends Interval {
  /** The row that set it. */
  readonly chosen: IntervalRow;
  /** Every row of the pair, those without a length included. */
  readonly rows: readonly IntervalRow[];
  /** Field findings and advice that ask for longer than the label does: shown beside it, never in its place. */
  readonly longerElsewhere: readonly { readonly row: IntervalRow; readonly interval: Interval }[];
  /** True where the chosen row rests on memory. */
  readonly fromMemory: boolean;
  /** True where the source says "at least this long". */
  readonly atLeast: boolean;
  /** True where some row of the pair asks for a field bioassay. */
  readonly bioassay: boolean;
  /** A sentence where the rows do not agree, else null. */
  readonly disagreement: string | null;
}

/** Mean length of a month, to rank intervals only. [d] */
const MONTH_DAYS = 30.4375;

interface Measured {
  readonly row: IntervalRow;
  readonly shortest: Interval;
  readonly longest: Interval;
}

/**
 * The rotation interval of an active and a crop: the longest that any label row of the pair gives. Field findings
 * and advice never set it.
 * @throws {MissingDataError} INTERVAL_MISSING where no label row gives a length
 */
export function chooseInterval(catalogue: Catalogue, active: Active, crop: Crop): ChosenInterval {
  const rows = catalogue.intervals.filter((row) => row.active === active.isoName && row.crop === crop.name);
  const everyLength = rows.map(measure).filter((one) => one !== null);
  const measured = everyLength.filter(({ row }) => row.kind === 'label');
  const [first, ...others] = measured;
  if (first === undefined) throw missing(active, crop, rows);

  const winner = others.reduce((best, next) => (outranks(next, best) ? next : best), first);
  const shortest = measured.reduce((best, next) =>
    daysOf(next.shortest) < daysOf(best.shortest) ? next : best,
  ).shortest;
  const agree =
    measured.every(({ shortest: low, longest }) => daysOf(low) === daysOf(longest)) &&
    measured.every(({ longest }) => daysOf(longest) === daysOf(winner.longest));
  return {
    ...winner.longest,
    chosen: winner.row,
    rows,
    longerElsewhere: everyLength
      .filter(({ row, longest }) => row.kind !== 'label' && daysOf(longest) > daysOf(winner.longest))
      .map(({ row, longest }) => ({ row, interval: longest })),
    fromMemory: winner.row.mark === 'from memory',
    atLeast: isAtLeast(winner.row),
    bioassay: rows.some(({ bioassay }) => bioassay === 'yes'),
    disagreement: agree
      ? null
      : `${measured.length === 1 ? 'The source gives' : 'Sources give'} ${sayInterval(shortest)} to ${sayInterval(winner.longest)} from ${active.isoName} to ` +
        `${crop.name}; the longest is used.`,
  };
}

/** An interval in words. */
export function sayInterval({ months, days }: Interval): string {
  const say = (count: number, unit: string) => `${count} ${unit}${count === 1 ? '' : 's'}`;
  if (months === 0) return say(days, 'day');
  return days === 0 ? say(months, 'month') : `${say(months, 'month')} ${say(days, 'day')}`;
}

const isAtLeast = ({ minMonths, maxMonths, minDays, maxDays }: IntervalRow): boolean =>
  (minMonths !== null && maxMonths === null) || (minDays !== null && maxDays === null);

const daysOf = ({ months, days }: Interval): number => months * MONTH_DAYS + days;

/** Longer wins; of equals "at least", then one that does not rest on memory, then a label. */
function outranks(next: Measured, best: Measured): boolean {
  const byLength = daysOf(next.longest) - daysOf(best.longest);
  if (byLength !== 0) return byLength > 0;
  const trust = ({ row }: Measured) =>
    (isAtLeast(row) ? 4 : 0) + (row.mark === 'from memory' ? 0 : 2) + (row.kind === 'label' ? 1 : 0);
  return trust(next) > trust(best);
}

function measure(row: IntervalRow): Measured | null {
  const { minMonths, maxMonths, minDays, maxDays } = row;
  if (minMonths !== null) {
    return { row, shortest: fromMonths(minMonths), longest: fromMonths(maxMonths ?? minMonths) };
  }
  if (minDays !== null) {
    return { row, shortest: { months: 0, days: minDays }, longest: { months: 0, days: maxDays ?? minDays } };
  }
  return null;
}

function fromMonths(months: number): Interval {
  const whole = Math.floor(months);
  return { months: whole, days: Math.round((months - whole) * 2 * HALF_MONTH_DAYS) };
}

function missing(active: Active, crop: Crop, rows: readonly IntervalRow[]): MissingDataError {
  const pair = `from ${active.isoName} to ${crop.name}`;
  const message = rows.some(({ bioassay, kind }) => bioassay === 'yes' && kind === 'label')
    ? `No label interval is known ${pair}: the source gives no length and asks for a field bioassay. Read your label.`
    : `No label interval is known ${pair}: read your label.`;
  return new MissingDataError('INTERVAL_MISSING', message, {
    hint: 'Add your label\'s interval with --interval, for example --interval "9 months".',
    details: {
      field: 'interval',
      active: active.isoName,
      crop: crop.name,
      rows: rows.map(({ rowId }) => rowId),
    },
  });
}
