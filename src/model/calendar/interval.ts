import { type CivilDate, civilDateOf, dayNumberOf, daysInMonth } from '../../calendar.ts';

/** A rotation interval as labels write it: whole months, then days. */
export interface Interval {
  readonly months: number;
  readonly days: number;
}

/**
 * Label date: application date plus the label's rotation interval. [day number]
 *
 * Equation   same day of the month `months` later (or that month's last day), then `days` on
 * Symbols    appliedDay [day number], interval months >= 0, days >= 0
 * Valid      any date
 * Source     calendar rule of our own: a missing day of the month falls back to the last one
 * @example isoDateOf(labelDateOf(parseIsoDate('2020-08-31'), { months: 6, days: 0 })) // '2021-02-28'
 */
export function labelDateOf(appliedDay: number, interval: Interval): number {
  const { year, month, day } = civilDateOf(appliedDay);
  const monthIndex = year * 12 + (month - 1) + interval.months;
  const targetYear = Math.floor(monthIndex / 12);
  const targetMonth = monthIndex - targetYear * 12 + 1;
  const targetDay = Math.min(day, daysInMonth(targetYear, targetMonth));
  return dayNumberOf(targetYear, targetMonth, targetDay) + interval.days;
}

/** The same calendar date in another year; 29 February becomes 28 February where there is none. */
export const sameDateInYear = (dayNumber: number, year: number): number =>
  dateInYear(civilDateOf(dayNumber), year);

/** A day of a month in a year; 29 February becomes 28 February where there is none. [day number] */
export const dateInYear = ({ month, day }: Omit<CivilDate, 'year'>, year: number): number =>
  dayNumberOf(year, month, Math.min(day, daysInMonth(year, month)));
