/**
 * Quantile of a climate sample whose limits lie half-way between ranks. [unit of the values]
 *
 * Equation   h = n·p + 0.5, kept in 1 … n; x_⌊h⌋ + (h − ⌊h⌋)(x_⌊h⌋+1 − x_⌊h⌋), x sorted upwards from rank 1
 * Symbols    p [0-1]; n >= 1
 * Valid      finite values
 * Source     the limits of quintiles of 30 years lie half-way between ranks 6/7, 12/13, 18/19 and 24/25, terciles
 *            between 10/11 and 20/21 (World Meteorological Organization, from memory); this form ("type 5") meets them
 * Checked    test/published/ranks.json (C-PP-2)
 * @example climateQuantile([1, 2, 3, 4, 5, 6], 1 / 3) // 2.5
 */
export function climateQuantile(values: Iterable<number>, p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  // Thirds of a whole number must not fall a rounding error short of their half rank.
  const rank = Number((sorted.length * p + 0.5).toPrecision(12));
  const kept = Math.min(Math.max(rank, 1), sorted.length);
  const below = Math.floor(kept);
  const low = sorted[below - 1];
  return below === kept ? low : low + (kept - below) * (sorted[below] - low);
}

/**
 * Weibull plotting position of a rank: its chance of not being exceeded. [0-1]
 *
 * Equation   p = m/(n + 1)
 * Symbols    m = rank, 1 for the smallest; n = sample size
 * Source     Weibull plotting position
 * Checked    test/published/ranks.json (C-PP-1)
 * @example plottingPosition(3, 30) // 0.0968
 */
export const plottingPosition = (rank: number, n: number): number => rank / (n + 1);
