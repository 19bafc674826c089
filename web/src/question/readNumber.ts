import { type Quantity, shownNumber, storedNumber, type Units } from '../units/units.ts';
import type { Reading } from './parseDate.ts';

/** What a number's blank allows. Limits are in stored units. */
export interface NumberRule {
  readonly quantity: Quantity;
  readonly units: Units;
  readonly min?: number;
  readonly max?: number;
  /** The lower limit itself is not allowed. */
  readonly aboveMin?: boolean;
  readonly whole?: boolean;
  /** An empty blank is allowed and means the standard value. */
  readonly optional?: boolean;
}

/** Reads a number typed into a blank; decimal commas and a trailing unit are not taken. */
export function readNumber(text: string, rule: NumberRule): Reading<number | undefined> {
  const { quantity, units, min, max, aboveMin = false, whole = false, optional = false } = rule;
  const clean = text.trim();
  if (clean === '') {
    return optional ? { value: undefined } : { problem: 'A number is needed here.' };
  }
  const shown = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(clean.replaceAll('−', '-'))
    ? Number(clean.replaceAll('−', '-'))
    : Number.NaN;
  if (Number.isNaN(shown)) return { problem: `“${clean}” is not a number. Write digits only, such as 1.5.` };
  if (whole && !Number.isInteger(shown)) return { problem: `${clean} is not a whole number.` };
  const value = storedNumber(shown, quantity, units);
  const low = min !== undefined && (aboveMin ? value <= min : value < min - 1e-9);
  const high = max !== undefined && value > max + 1e-9;
  if (low || high) return { problem: `${clean} is out of range: give ${rangeWords(rule)}.` };
  return { value };
}

function rangeWords({ quantity, units, min, max, aboveMin }: NumberRule): string {
  const shown = (limit: number) => shownNumber(limit, quantity, units);
  const least = min === undefined ? null : `${aboveMin ? 'more than' : 'at least'} ${shown(min)}`;
  const most = max === undefined ? null : `at most ${shown(max)}`;
  return [least, most].filter(Boolean).join(' and ');
}
