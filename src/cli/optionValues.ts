import { InvalidArgumentError } from 'commander';
import { parseJson } from '../app/boundedJson.ts';
import { InvalidInputError } from '../errors.ts';

/** A number option. */
export function numberOption(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new InvalidArgumentError('It must be a number.');
  return value;
}

/** A number option within limits. @param unit with a space before it; empty where the flag has none */
export const numberWithin =
  (low: number, high: number, unit = '') =>
  (text: string): number =>
    within(numberOption(text), low, high, unit);

/** A whole-number option within limits. */
export const wholeNumberWithin =
  (low: number, high: number) =>
  (text: string): number =>
    within(wholeNumberOption(text), low, high, '');

function within(value: number, low: number, high: number, unit: string): number {
  if (value < low || value > high)
    throw new InvalidArgumentError(`It must be from ${low} to ${high}${unit}.`);
  return value;
}

/** An amount of money, of any currency. */
export function moneyOption(text: string): number {
  const value = numberOption(text);
  if (value <= 0) throw new InvalidArgumentError('It must be more than 0.');
  return value;
}

/** A whole-number option. */
export function wholeNumberOption(text: string): number {
  if (!/^-?\d{1,9}$/.test(text)) throw new InvalidArgumentError('It must be a whole number.');
  return Number(text);
}

/** A port, 0 for any free one. */
export const portOption = wholeNumberWithin(0, 65_535);

/** Most worker threads that can be asked for. */
const MOST_WORKERS = 64;

/** A number of worker threads, 0 for none. */
export const workersOption = wholeNumberWithin(0, MOST_WORKERS);

/** A span of years such as 1981-2018. */
export function yearsOption(text: string): { baseFrom: number; baseTo: number } {
  const match = /^(\d{4})\s*(?:-|\.\.)\s*(\d{4})$/.exec(text);
  if (!match) throw new InvalidArgumentError('Write two years, for example 1981-2018.');
  return { baseFrom: Number(match[1]), baseTo: Number(match[2]) };
}

/** Three chances such as 40,35,25. [%] */
export function chancesOption(text: string): {
  belowPercent: number;
  nearPercent: number;
  abovePercent: number;
} {
  const parts = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (parts.length !== 3 || parts.some((part) => !Number.isFinite(part))) {
    throw new InvalidArgumentError(
      'Write three chances in per cent, below, near and above normal: 40,35,25.',
    );
  }
  const [belowPercent, nearPercent, abovePercent] = parts;
  return { belowPercent, nearPercent, abovePercent };
}

/** Two dates such as 2026-12-01..2027-02-28. */
export function datesOption(text: string): { from: string; to: string } {
  const match = /^(\d{4}-\d{2}-\d{2})\.\.(\d{4}-\d{2}-\d{2})$/.exec(text);
  if (!match) throw new InvalidArgumentError('Write two dates, for example 2026-12-01..2027-02-28.');
  return { from: match[1], to: match[2] };
}

/** DATE=MM pairs such as 2026-07-04=25, collected over repeats. */
export function irrigationOption(
  text: string,
  earlier: { date: string; mm: number }[] = [],
): { date: string; mm: number }[] {
  const match = /^(\d{4}-\d{2}-\d{2})=(\d+(?:\.\d+)?)$/.exec(text);
  if (!match) throw new InvalidArgumentError('Write DATE=MM, for example 2026-07-04=25.');
  return [...earlier, { date: match[1], mm: Number(match[2]) }];
}

/** KEY=VALUE pairs, collected over repeats; numbers become numbers. */
export function pairsOption(
  text: string,
  earlier: Record<string, string | number> = {},
): Record<string, string | number> {
  const match = /^([A-Za-z][A-Za-z0-9]*)=(.+)$/.exec(text);
  if (!match) throw new InvalidArgumentError('Write KEY=VALUE, for example soilSpread=0.5.');
  const value = Number(match[2]);
  return { ...earlier, [match[1]]: Number.isFinite(value) ? value : match[2] };
}

/** The JSON object in a file that the user named. */
export function jsonObject(text: string, path: string): Record<string, unknown> {
  let value: unknown;
  try {
    value = parseJson(text);
  } catch (cause) {
    throw new InvalidInputError('JSON_DAMAGED', `${path} is not JSON: ${(cause as Error).message}.`, {
      hint: 'Write one JSON object with the fields of a question.',
      cause,
    });
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new InvalidInputError('JSON_DAMAGED', `${path} holds no JSON object.`, {
      hint: 'Write one JSON object with the fields of a question.',
    });
  }
  return value as Record<string, unknown>;
}
