/**
 * Quantile of a sample by linear interpolation between order statistics (type 7). [unit of the values]
 *
 * Equation   h = (n − 1)·p; x_⌊h⌋ + (h − ⌊h⌋)(x_⌊h⌋+1 − x_⌊h⌋), x sorted upwards from index 0
 * Symbols    p [0-1]; n >= 1
 * Valid      values may hold +Infinity (a year that never clears): an order statistic that touches it is +Infinity
 * Source     the "type 7" definition of common statistics software
 * Checked    test/model/carryoverProbability.test.ts (1 … 10 at 1/3 gives 4)
 * @example quantile([1, 2, 3, 4], 0.5) // 2.5
 */
export function quantile(values: Iterable<number>, p: number): number {
  const sorted = new Float64Array(values).sort();
  const position = (sorted.length - 1) * p;
  const below = Math.floor(position);
  const share = position - below;
  const low = sorted[below];
  const high = share === 0 ? low : sorted[below + 1];
  return low === high ? low : low + share * (high - low);
}

/**
 * Median of a sample, type 7. [unit of the values]
 * @example median([3, 1, 2]) // 2
 */
export const median = (values: Iterable<number>): number => quantile(values, 0.5);
