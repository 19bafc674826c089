import { assertWithin } from '../../errors.ts';

/**
 * Square of mean over actual distance from Earth to Sun on a day of the year. [–]
 *
 * Equation   d_r = 1 + 0.033 cos(2πJ / 365)
 * Symbols    dayOfYear = J, day of the year [–], 1 to 366; 365 divides in leap years too
 * Valid      any day of the year; outside 1 to 366 -> OutOfRangeError
 * Source     FAO-56 eq. 23
 * Checked    test/published/radiation.json
 * @example   inverseRelativeDistance(246) // 0.984829
 */
export function inverseRelativeDistance(dayOfYear: number): number {
  assertWithin('dayOfYear', dayOfYear, 1, 366);
  return 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365);
}
