import { dayNumberOf, daysInMonth } from '../calendar.ts';
import { FIRST_YEAR, LAST_YEAR } from './recordYears.ts';

/** Day number of a date that exists in a year a record can hold, else NaN. [days since 1970-01-01] */
export function dayNumberIn(year: number, month: number, day: number): number {
  const exists =
    year >= FIRST_YEAR &&
    year <= LAST_YEAR &&
    month >= 1 &&
    month <= 12 &&
    day >= 1 &&
    (day <= 28 || day <= daysInMonth(year, month));
  return exists ? dayNumberOf(year, month, day) : Number.NaN;
}

const YEAR_FIRST = /^(\d{4})([-/.]?)(\d{2})\2(\d{2})(?:[T ]00:00(?::00(?:\.0+)?)?Z?)?$/;

/**
 * Day number of a date that begins with its year: 2020-03-04, 2020/03/04, 20200304, or the first with midnight behind
 * it. NaN where the text is none. [days since 1970-01-01]
 */
export function yearFirstDay(text: string): number {
  const match = YEAR_FIRST.exec(text);
  return match ? dayNumberIn(Number(match[1]), Number(match[3]), Number(match[4])) : Number.NaN;
}
