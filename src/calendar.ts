/** Calendar dates as day numbers since 1970-01-01: no time zones, no clock. */
import { InvalidInputError } from './errors.ts';

/** A calendar date; month and day count from 1. */
export interface CivilDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/**
 * Day number of a Gregorian calendar date. [days since 1970-01-01]
 *
 * Equation   days in whole 400-year eras, plus days since 1 March of the era's year
 * Symbols    year, month 1-12, day 1-31
 * Valid      any existing Gregorian date; months and days are not checked here, see {@link parseIsoDate}
 * Source     arithmetic of the Gregorian calendar (400 years = 146,097 days)
 * @example dayNumberOf(2020, 8, 10) // 18484
 */
export function dayNumberOf(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfShiftedYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra =
    yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfShiftedYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/**
 * Calendar date of a day number; the inverse of {@link dayNumberOf}.
 * @example civilDateOf(18484) // { year: 2020, month: 8, day: 10 }
 */
export function civilDateOf(dayNumber: number): CivilDate {
  const shifted = dayNumber + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfShiftedYear =
    dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfShiftedYear + 2) / 153);
  const day = dayOfShiftedYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

/** Whether a year has a 29 February. */
export const isLeapYear = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Length of a month. [d] */
export const daysInMonth = (year: number, month: number): number =>
  month === 2 && isLeapYear(year) ? 29 : MONTH_LENGTHS[month - 1];

/**
 * `YYYY-MM-DD` of a day number.
 * @example isoDateOf(18484) // '2020-08-10'
 */
export function isoDateOf(dayNumber: number): string {
  const { year, month, day } = civilDateOf(dayNumber);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
}

/**
 * Day number of a `YYYY-MM-DD` text.
 * @throws {InvalidInputError} DATE_UNREADABLE where the text is no such date or the day does not exist
 * @example parseIsoDate('2020-08-10') // 18484
 */
export function parseIsoDate(text: string): number {
  const isWritten = /^\d{4}-\d{2}-\d{2}$/.test(text);
  const year = Number(text.slice(0, 4));
  const month = Number(text.slice(5, 7));
  const day = Number(text.slice(8));
  if (!isWritten || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) {
    throw new InvalidInputError('DATE_UNREADABLE', `"${text}" is not a calendar date.`, {
      hint: 'Write dates as YYYY-MM-DD, for example 2027-05-10.',
    });
  }
  return dayNumberOf(year, month, day);
}
