import type { Interval } from '../model/calendar/interval.ts';
import type { IntervalRow } from '../schema/catalogue.ts';
import { intervalFromMonths } from '../units.ts';

/** Mean length of a month, to rank intervals only. [d] */
const MONTH_DAYS = 30.4375;

/** A row that gives a length: its shorter and its longer end. */
export interface MeasuredRow {
  readonly row: IntervalRow;
  readonly shortest: Interval;
  readonly longest: Interval;
}

/**
 * An interval in words.
 * @example sayInterval({ months: 1, days: 15 }) // '1 month 15 days'
 */
export function sayInterval({ months, days }: Interval): string {
  const say = (count: number, unit: string) => `${count} ${unit}${count === 1 ? '' : 's'}`;
  if (months === 0) return say(days, 'day');
  return days === 0 ? say(months, 'month') : `${say(months, 'month')} ${say(days, 'day')}`;
}

/** Days that an interval is taken for when lengths are compared; months count 30.4375 days. [d] */
export const rankDays = ({ months, days }: Interval): number => months * MONTH_DAYS + days;

/** True where the source gives no upper end: "at least this long". */
export const isAtLeast = ({ minMonths, maxMonths, minDays, maxDays }: IntervalRow): boolean =>
  (minMonths !== null && maxMonths === null) || (minDays !== null && maxDays === null);

/** Both ends of a row's interval; null where it gives no length. */
export function measureRow(row: IntervalRow): MeasuredRow | null {
  const { minMonths, maxMonths, minDays, maxDays } = row;
  if (minMonths !== null) {
    return {
      row,
      shortest: intervalFromMonths(minMonths),
      longest: intervalFromMonths(maxMonths ?? minMonths),
    };
  }
  if (minDays !== null) {
    return { row, shortest: { months: 0, days: minDays }, longest: { months: 0, days: maxDays ?? minDays } };
  }
  return null;
}
