import { assertWithin } from '../../errors.ts';

/**
 * Angle of the Sun above the plane of the equator on a day of the year. [rad]
 *
 * Equation   δ = 0.409 sin(2πJ / 365 − 1.39)
 * Symbols    dayOfYear = J, day of the year [–], 1 to 366; 365 divides in leap years too
 * Valid      any day of the year; outside 1 to 366 -> OutOfRangeError
 * Source     FAO-56 eq. 24
 * Checked    test/published/radiation.json
 * @example   solarDeclination(246) // 0.119655
 */
export function solarDeclination(dayOfYear: number): number {
  assertWithin('dayOfYear', dayOfYear, 1, 366);
  return 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
}
