/** Calendar dates of the page: `YYYY-MM-DD` texts and day numbers since 1970-01-01, always in UTC. */
export { sayDate, sayMonthDay, sayNear } from '../../../src/chart/saidWords.ts';

const MS_PER_DAY = 86_400_000;

/** Day number of a date. */
export const dayOf = (isoDate: string): number => Date.parse(isoDate) / MS_PER_DAY;

/** Date of a day number. */
export const isoOf = (day: number): string => new Date(day * MS_PER_DAY).toISOString().slice(0, 10);

/** Whole days from one date to another. */
export const daysBetween = (from: string, to: string): number => dayOf(to) - dayOf(from);

const written = (options: Intl.DateTimeFormatOptions) => {
  const format = new Intl.DateTimeFormat('en-US', { ...options, timeZone: 'UTC' });
  return (isoDate: string) => format.format(Date.parse(isoDate));
};

/** "Monday, May 10, 2027" */
export const sayFullDate = written({ weekday: 'long', year: 'numeric', month: 'long', day: 'numeric' });
/** "Monday" */
export const sayWeekday = written({ weekday: 'long' });
/** "May 10, 2027", months cut short. */
export const sayShort = written({ year: 'numeric', month: 'short', day: 'numeric' });
/** "Sep 2026" */
export const sayMonth = written({ year: 'numeric', month: 'short' });
