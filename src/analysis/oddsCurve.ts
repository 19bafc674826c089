import { LEAST_YEARS } from './historicalYears.ts';

/** Odds at each offset from the first application; ends where fewer than ten years reach. */
export interface OddsCurve {
  readonly odds: Float64Array;
}

/** What the curve needs of a year: a probability for each offset that its record reaches. */
export interface YearProbabilities {
  readonly probabilities: Float64Array;
}

/**
 * Weighted mean probability over the years at each offset. A year whose record has run out drops out
 * while at least ten remain. [0-1]
 */
export function oddsCurve(
  years: readonly YearProbabilities[],
  weights: Float64Array,
  horizonOffset: number,
): OddsCurve {
  const reach = years.map((year) => year.probabilities.length - 1);
  const needed = Math.min(LEAST_YEARS, years.length);
  const lastOffset = Math.min(horizonOffset, reach.toSorted((a, b) => b - a)[needed - 1]);
  const shortest = Math.min(...reach);
  const odds = new Float64Array(lastOffset + 1);
  let kept = years.map((_, index) => index);
  let { relative, total } = relativeWeights(kept, weights);
  for (let offset = 0; offset <= lastOffset; offset++) {
    if (offset > shortest && kept.some((index) => reach[index] < offset)) {
      kept = kept.filter((index) => reach[index] >= offset);
      ({ relative, total } = relativeWeights(kept, weights));
    }
    let sum = 0;
    for (let k = 0; k < kept.length; k++) sum += relative[k] * years[kept[k]].probabilities[offset];
    odds[offset] = sum / total;
  }
  return { odds };
}

/**
 * Weights of the kept years relative to the largest, so that equal ones become exact ones, and their sum; all one
 * where only years without weight are left.
 */
export function relativeWeights(
  kept: readonly number[],
  weights: Float64Array,
): { relative: Float64Array; total: number } {
  let largest = 0;
  for (const index of kept) largest = Math.max(largest, weights[index]);
  const relative = new Float64Array(kept.length).fill(1);
  if (largest > 0) for (let k = 0; k < kept.length; k++) relative[k] = weights[kept[k]] / largest;
  let total = 0;
  for (const weight of relative) total += weight;
  return { relative, total };
}

/**
 * First offset, from `fromOffset` on, from which the values are at or under the limit and stay there;
 * null where the last value is still above it.
 */
export function clearOffset(values: ArrayLike<number>, fromOffset: number, limit: number): number | null {
  let clear: number | null = null;
  for (let offset = values.length - 1; offset >= fromOffset && values[offset] <= limit; offset--) {
    clear = offset;
  }
  return clear;
}
