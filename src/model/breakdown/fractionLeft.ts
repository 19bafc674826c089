import { assertWithin, OutOfRangeError } from '../../errors.ts';

/**
 * Share of a dose still there after a number of breakdown days. [–]
 *
 * Equation   C/C₀ = exp(−ln 2 · t/h)
 * Symbols    breakdownDays = t, time in days of breakdown at 20 °C and reference moisture [d], at least 0
 *            halfLifeDays = h, half-life in the same days [d], above 0
 * Valid      first-order loss; outside the ranges -> OutOfRangeError
 * Source     FOCUS guidance on degradation kinetics (2006), SFO model
 * Checked    test/published/normalisation.json
 * @example   fractionLeft(3.2325, 60) // 0.96335
 */
export function fractionLeft(breakdownDays: number, halfLifeDays: number): number {
  assertWithin('breakdownDays', breakdownDays, 0, Number.POSITIVE_INFINITY);
  if (!(halfLifeDays > 0)) throw new OutOfRangeError('halfLifeDays', halfLifeDays, 'above 0');
  return Math.exp((-Math.LN2 * breakdownDays) / halfLifeDays);
}
