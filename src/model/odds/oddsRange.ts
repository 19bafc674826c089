import { effectiveYears } from '../years/effectiveYears.ts';

/** Two-sided 90 % normal quantile. */
const Z_90 = 1.645;

/**
 * Range of the mean odds from the number of years alone. [0-1]
 *
 * Equation   mean ± 1.645·s/√n_eff, clipped to 0 … 1; n_eff = (Σw)²/Σw²;
 *            s² = Σw(p − mean)²/Σw · n_eff/(n_eff − 1)
 * Symbols    p = probabilities, one per year [0-1]; w = weights, >= 0
 * Valid      n_eff > 1; says nothing of the model's own errors
 * Source     large-sample interval of a mean; n_eff as for the weighted ensemble
 * Checked    test/cases/crossCheck.test.ts, column "range"
 * @example oddsRange([0.2, 0.4], [1, 1], 0.3) // { low: 0.1355, high: 0.4645 }
 */
export function oddsRange(
  probabilities: ArrayLike<number>,
  weights: ArrayLike<number>,
  mean: number,
): { low: number; high: number } {
  let weightSum = 0;
  let squares = 0;
  for (let i = 0; i < probabilities.length; i++) {
    weightSum += weights[i];
    squares += weights[i] * (probabilities[i] - mean) ** 2;
  }
  const years = effectiveYears(weights);
  const deviation = years > 1 ? Math.sqrt(((squares / weightSum) * years) / (years - 1)) : 0;
  const half = (Z_90 * deviation) / Math.sqrt(years);
  return { low: Math.max(0, mean - half), high: Math.min(1, mean + half) };
}
