import { assertWithin, OutOfRangeError } from '../../errors.ts';

/**
 * Share of the spray on leaves that is still there after some days without rain. [–]
 *
 * Equation   L/L₀ = exp(−ln 2 · t/h)
 * Symbols    days = t, calendar days since the spray [d], at least 0
 *            halfLifeDays = h, half-life on leaves [d], above 0, default 10
 * Valid      first-order loss, all routes but wash-off; outside the ranges -> OutOfRangeError
 * Source     default of 10 d as named in the abstract of an open data set on foliar dissipation (2018),
 *            whose own 396 trials have the geometric mean 3.2 d: 10 d leaves more to be washed off
 * Checked    test/published/foliage.json
 * @example   foliageFractionLeft(7) // 0.6156
 */
export function foliageFractionLeft(days: number, halfLifeDays = 10): number {
  assertWithin('days', days, 0, Number.POSITIVE_INFINITY);
  if (!(halfLifeDays > 0)) throw new OutOfRangeError('halfLifeDays', halfLifeDays, 'above 0');
  return Math.exp((-Math.LN2 * days) / halfLifeDays);
}
