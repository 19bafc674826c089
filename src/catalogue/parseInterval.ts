import { InvalidInputError } from '../errors.ts';
import type { Interval } from '../model/calendar/interval.ts';
import { HALF_MONTH_DAYS } from '../units.ts';

const UNITS: Readonly<Record<string, keyof Interval>> = {
  y: 'months',
  yr: 'months',
  yrs: 'months',
  year: 'months',
  years: 'months',
  mo: 'months',
  mos: 'months',
  month: 'months',
  months: 'months',
  w: 'days',
  wk: 'days',
  wks: 'days',
  week: 'days',
  weeks: 'days',
  d: 'days',
  day: 'days',
  days: 'days',
};

/** Months in a year and days in a week; other units count as themselves. */
const sizeOf = (unit: string): number => (unit.startsWith('y') ? 12 : unit.startsWith('w') ? 7 : 1);

/** Longest interval that is believed. [months] */
const LONGEST_MONTHS = 120;

/**
 * A rotation interval as a label writes it. Half months are allowed and count 15 days.
 * @throws {InvalidInputError} INTERVAL_UNREADABLE where the text is none, or longer than ten years
 * @example parseInterval('1 month 15 days') // { months: 1, days: 15 }
 */
export function parseInterval(text: string): Interval {
  const plain = text.trim().toLowerCase();
  if (plain === '0') return { months: 0, days: 0 };
  const parts = plain.split(/(?<!\s)(?:\s*(?:,|\band\b)\s*|\s+(?=\d))/);
  let months = 0;
  let days = 0;
  const units = new Set<string>();
  for (const part of parts) {
    const [, figure, unit] = /^(\d{1,4}(?:\.5)?)[\s-]*([a-z]+)$/.exec(part) ?? [];
    const kind = unit === undefined ? undefined : UNITS[unit];
    const amount = Number(figure) * (unit === undefined ? 0 : sizeOf(unit));
    const halfMonth = kind === 'months' && !Number.isInteger(amount);
    if (kind === undefined || units.has(unit[0]) || (kind === 'days' && !Number.isInteger(amount))) {
      throw unreadable(text);
    }
    units.add(unit[0]);
    if (kind === 'months') {
      months += Math.floor(amount);
      if (halfMonth) days += HALF_MONTH_DAYS;
    } else {
      days += amount;
    }
  }
  if (months + days / 30.4375 > LONGEST_MONTHS) throw unreadable(text);
  return { months, days };
}

function unreadable(text: string): InvalidInputError {
  return new InvalidInputError('INTERVAL_UNREADABLE', `"${text}" cannot be read as a rotation interval.`, {
    hint: 'Write it like "9 months", "30 d", "1 month 15 days", "2 years" or "0"; ten years at most.',
    details: { given: text },
  });
}
