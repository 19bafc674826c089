/** How dates are written for people: the one writer, for sentences of the core and for the page. English. */
import { civilDateOf, parseIsoDate } from './calendar.ts';

/** Words with the month first, as in the United States, or `YYYY-MM-DD`. */
export const DATE_STYLES = ['us', 'iso'] as const;
export type DateStyle = (typeof DATE_STYLES)[number];

/** Dates in one style. All take `YYYY-MM-DD`. */
export interface DateWords {
  readonly style: DateStyle;
  /** "May 10, 2027" */
  full(isoDate: string): string;
  /** "Monday, May 10, 2027" */
  withWeekday(isoDate: string): string;
  /** "Monday" */
  weekday(isoDate: string): string;
  /** "May 10, 2027" with the month cut short, for a column. */
  short(isoDate: string): string;
  /** "May 10", with the year only where it is not that of `near`. */
  near(isoDate: string, near: string): string;
  /** "May 10"; ISO dates keep their year. */
  monthDay(isoDate: string): string;
  /** "May 10" of any year, of `MM-DD`. */
  everyYear(monthDay: string): string;
  /** "Sep 2026", of any day of the month, or of `YYYY-MM`. */
  month(isoDate: string): string;
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
/** A month for an axis whose years stand apart: "Sep", or "09". @param month 1-12 */
export const monthName = (month: number, style: DateStyle): string =>
  style === 'us' ? MONTHS[month - 1].slice(0, 3) : String(month).padStart(2, '0');

const WEEKDAYS = ['Thursday', 'Friday', 'Saturday', 'Sunday', 'Monday', 'Tuesday', 'Wednesday'];

const weekdayOf = (isoDate: string): string => WEEKDAYS[((parseIsoDate(isoDate) % 7) + 7) % 7];

/**
 * The writer of dates in a style.
 * @param space what stands between month and day in words; a space that does not break keeps them on one line
 * @example datesIn('us').full('2027-05-10') // 'May 10, 2027'
 */
export function datesIn(style: DateStyle, space = ' '): DateWords {
  return style === 'iso' ? ISO : usDates(space);
}

function usDates(space: string): DateWords {
  const dayOf = (isoDate: string, letters?: number) => {
    const { month, day } = civilDateOf(parseIsoDate(isoDate));
    return `${MONTHS[month - 1].slice(0, letters)}${space}${day}`;
  };
  const yearOf = (isoDate: string) => Number(isoDate.slice(0, 4));
  const full = (isoDate: string) => `${dayOf(isoDate)}, ${yearOf(isoDate)}`;
  return {
    style: 'us',
    full,
    weekday: weekdayOf,
    withWeekday: (isoDate) => `${weekdayOf(isoDate)}, ${full(isoDate)}`,
    short: (isoDate) => `${dayOf(isoDate, 3)}, ${yearOf(isoDate)}`,
    near: (isoDate, near) => (yearOf(isoDate) === yearOf(near) ? dayOf(isoDate) : full(isoDate)),
    monthDay: (isoDate) => dayOf(isoDate),
    everyYear: (monthDay) => dayOf(`2000-${monthDay}`),
    month: (isoDate) => `${MONTHS[Number(isoDate.slice(5, 7)) - 1].slice(0, 3)}${space}${yearOf(isoDate)}`,
  };
}

const same = (isoDate: string): string => isoDate;

const ISO: DateWords = {
  style: 'iso',
  full: same,
  weekday: weekdayOf,
  withWeekday: (isoDate) => `${weekdayOf(isoDate)}, ${isoDate}`,
  short: same,
  near: same,
  monthDay: same,
  everyYear: same,
  month: (isoDate) => isoDate.slice(0, 7),
};

/**
 * A text whose ISO dates are written in a style; what only looks like a date stays as it is. For refusals, which are made
 * where nobody knows the reader's style.
 * @example datesReworded('from 2026-08-14 on', datesIn('us')) // 'from August 14, 2026 on'
 */
export const datesReworded = (text: string, { full }: Pick<DateWords, 'full'>): string =>
  text.replaceAll(/(?<![\w-])\d{4}-\d{2}-\d{2}(?![\w-])/g, (date) =>
    isCalendarDate(date) ? full(date) : date,
  );

/** Whether a text of the form YYYY-MM-DD is a day of the calendar. */
export function isCalendarDate(text: string): boolean {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(text) : Number.NaN;
  return !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(text);
}
