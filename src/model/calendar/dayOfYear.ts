import { daysInMonth, isLeapYear } from '../../calendar.ts';
import { InvalidInputError } from '../../errors.ts';

/**
 * Number of a calendar date within its year, 1 January being 1. [–]
 *
 * Equation   J = INT(275 M/9 − 30 + D) − 2; + 2 if M < 3; + 1 if M > 2 in a leap year
 * Symbols    year [–], whole; month = M [–], 1 to 12; day = D [–], 1 to the month's length
 * Valid      dates that exist in the Gregorian calendar; others -> InvalidInputError
 * Source     FAO-56 Table 2.5
 * Checked    test/published/day-of-year.json
 * @example   dayOfYear(2021, 9, 3) // 246
 */
export function dayOfYear(year: number, month: number, day: number): number {
  const whole = [year, month, day].every(Number.isInteger);
  if (!whole || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) {
    throw new InvalidInputError(
      'NO_SUCH_DATE',
      `Year ${year}, month ${month}, day ${day} is not a date; it must exist in the calendar.`,
      {
        hint: 'Give a whole year, a month from 1 to 12 and a day of that month.',
        details: { year, month, day },
      },
    );
  }
  const base = Math.trunc((275 * month) / 9 - 30 + day) - 2;
  if (month < 3) return base + 2;
  return isLeapYear(year) ? base + 1 : base;
}
