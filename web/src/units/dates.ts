import { sayDate, sayMonthDay, sayNear, sayShort } from '../question/calendar.ts';
import type { Units } from './units.ts';

/** How dates are written: in words with US units, as `YYYY-MM-DD` with metric ones. */
export interface DateWords {
  readonly full: (isoDate: string) => string;
  /** For a table’s column. */
  readonly short: (isoDate: string) => string;
  /** Without the year where it is that of another date. */
  readonly near: (isoDate: string, near: string) => string;
  /** Without the year. */
  readonly monthDay: (isoDate: string) => string;
}

const WORDS: DateWords = { full: sayDate, short: sayShort, near: sayNear, monthDay: sayMonthDay };
const ISO: DateWords = { full: same, short: same, near: same, monthDay: (isoDate) => isoDate.slice(5) };

function same(isoDate: string): string {
  return isoDate;
}

export const datesIn = (units: Units): DateWords => (units === 'us' ? WORDS : ISO);
