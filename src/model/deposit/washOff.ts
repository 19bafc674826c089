import { assertWithin } from '../../errors.ts';

/**
 * Share of the spray on leaves that a rain carries to the ground. [–]
 *
 * Equation   F = 1 − exp(−w P)
 * Symbols    rainMm = P, rain or irrigation of the event [mm], at least 0
 *            coefficientPerMm = w, wash-off coefficient [mm-1], 0 to 1, default 0.05
 * Valid      rain, not snow; outside the ranges -> OutOfRangeError
 * Source     FOCUS default 0.05 mm-1 as named in Environmental Toxicology and Chemistry,
 *            doi 10.1002/etc.5527, a ring test of 20 mm in one hour
 * Checked    test/published/foliage.json
 * @example   washOffFraction(10) // 0.3935
 */
export function washOffFraction(rainMm: number, coefficientPerMm = 0.05): number {
  assertWithin('rainMm', rainMm, 0, Number.POSITIVE_INFINITY);
  assertWithin('coefficientPerMm', coefficientPerMm, 0, 1);
  return 1 - Math.exp(-coefficientPerMm * rainMm);
}
