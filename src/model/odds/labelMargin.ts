import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { assertWithin } from '../../errors.ts';

/**
 * Logarithm of the label's margin, ln(1/τ): how far residue has fallen, in the slow soil that the label is
 * still taken to cover, once the demand is met. τ is the harmless fraction. [-]
 *
 * Equation   ln(1/τ) = (ln 2/h)·e^(−σ z_q)·D_L,  z_q = Φ⁻¹(q)
 * Symbols    h = halfLife, half-life without site factors [breakdown days], > 0
 *            σ = soilSpread [-], > 0; q = labelMargin, share of soils covered [0-1]
 *            D_L = demand [breakdown days], >= 0
 * Valid      first-order loss; a half-life that is not above 0 -> OutOfRangeError
 * Source     assumption of our own: the interval covers 9 soils of 10
 * Checked    test/cases/crossCheck.test.ts
 * @example logLabelMargin(40, 9, 0.35, 0.9) // 1.96718
 */
export function logLabelMargin(
  demand: number,
  halfLife: number,
  soilSpread: number,
  labelMargin: number,
): number {
  assertWithin('half-life in breakdown days', halfLife, Number.MIN_VALUE, Number.POSITIVE_INFINITY);
  return (Math.LN2 / halfLife) * Math.exp(-soilSpread * normalQuantile(labelMargin, 0, 1)) * demand;
}
