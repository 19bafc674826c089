import type { DateStyle } from '../units/dates.ts';

/** What a text turned out to be: a value, or what is wrong with it and how to mend it. */
export type Reading<T> = { readonly value: T } | { readonly problem: string };

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const HOW: Record<DateStyle, string> = {
  us: 'Write it like May 10 2027, 5/10/2027 or 2027-05-10.',
  iso: 'Write it like 2027-05-10 or May 10 2027.',
};

/**
 * Reads a date as people write it: "May 10 2027", "10 May 2027", "5/10/2027" with the month first, or ISO.
 * Where dates are ISO, one with slashes is read only if it can be read in one way.
 * Years have four digits; nothing is guessed.
 */
export function parseDate(text: string, style: DateStyle): Reading<string> {
  // A date that was copied from the page may carry what keeps it on one line there.
  const clean = text
    .replaceAll('\u2060', '')
    .trim()
    .toLowerCase()
    .replace(/^(mon|tue|wed|thu|fri|sat|sun)[a-z]*,?\s+/, '');
  if (clean === '') return { problem: `A date is needed here. ${HOW[style]}` };
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(clean);
  if (iso) return checked(text, Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const slashed = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d+)$/.exec(clean);
  if (slashed) {
    const [first, second] = [Number(slashed[1]), Number(slashed[2])];
    if (style === 'us') return checked(text, fullYear(slashed[3]), first, second);
    return eitherWay(text, fullYear(slashed[3]), first, second);
  }
  const monthFirst = /^([a-z]+)\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d+)$/.exec(clean);
  if (monthFirst)
    return checked(text, fullYear(monthFirst[3]), monthOf(monthFirst[1]), Number(monthFirst[2]));
  const dayFirst = /^(\d{1,2})(?:st|nd|rd|th)?\.?\s+([a-z]+)\.?,?\s+(\d+)$/.exec(clean);
  if (dayFirst) return checked(text, fullYear(dayFirst[3]), monthOf(dayFirst[2]), Number(dayFirst[1]));
  return { problem: `“${text.trim()}” is not a date that can be read. ${HOW[style]}` };
}

/** A date whose order is not known: read where one of its numbers can be no month, or both are the same. */
function eitherWay(text: string, year: number, first: number, second: number): Reading<string> {
  if (first > 12) return checked(text, year, second, first);
  if (second > 12 || first === second) return checked(text, year, first, second);
  return { problem: `“${text.trim()}” can be read in two ways. ${HOW.iso}` };
}

const fullYear = (digits: string): number => (digits.length === 4 ? Number(digits) : Number.NaN);

const monthOf = (name: string): number =>
  name.length < 3 ? 0 : MONTHS.findIndex((short) => name.startsWith(short)) + 1;

function checked(text: string, year: number, month: number, day: number): Reading<string> {
  const given = `“${text.trim()}”`;
  if (Number.isNaN(year)) return { problem: `${given} needs a year of four digits, like May 10 2027.` };
  if (month < 1 || month > 12) {
    return { problem: `${given} has no such month; the month comes first, as in 5/10/2027 for May 10.` };
  }
  const last = new Date(Date.UTC(year, month, 0)).getUTCDate();
  if (day < 1 || day > last) return { problem: `${given} has no such day; that month has ${last}.` };
  return { value: new Date(Date.UTC(year, month - 1, day)).toISOString().slice(0, 10) };
}
