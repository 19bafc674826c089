import { assertWithin, OutOfRangeError } from '../../errors.ts';

/**
 * Half-life under constant warmth and moisture, in calendar days; Infinity where breakdown stands still. [d]
 *
 * Equation   h_eff = h/(f_T f_W)
 * Symbols    halfLifeDays = h, half-life at 20 °C and reference moisture [d], above 0
 *            fT = f_T, response to temperature [–], at least 0
 *            fW = f_W, response to moisture [–], 0 to 1
 * Valid      first-order loss at steady conditions; outside the ranges -> OutOfRangeError
 * Source     FOCUS guidance on degradation kinetics (2014), time-step normalisation with one constant step
 * Checked    test/published/normalisation.json
 * @example   effectiveHalfLife(60, 0.3876, 0.6156) // 251.5
 */
export function effectiveHalfLife(halfLifeDays: number, fT: number, fW: number): number {
  if (!(halfLifeDays > 0)) throw new OutOfRangeError('halfLifeDays', halfLifeDays, 'above 0');
  assertWithin('fT', fT, 0, Number.POSITIVE_INFINITY);
  assertWithin('fW', fW, 0, 1);
  return halfLifeDays / (fT * fW);
}
