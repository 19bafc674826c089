import { carryoverOfOnePart, meanCarryover } from '../model/odds/carryoverProbability.ts';
import { LEAST_YEARS } from './historicalYears.ts';
import { relativeWeights } from './oddsCurve.ts';

/** One year's course of breakdown: the days before offset d are `sums[base + d] - sums[base]`. */
export interface CourseOfSums {
  readonly sums: Float64Array;
  readonly base: number;
}

/** One treatment on bare soil, sprayed at offset 0: its residue falls day by day, so dates are found by halving. */
export interface PlainTreatment {
  /** ln(1/τ) + ln ℓ [-]. */
  readonly logExcess: number;
  /** Site half-life [breakdown days]. */
  readonly siteHalfLife: number;
  readonly soilSpread: number;
}

/** Probability of harm at an offset in one year's weather. [0-1] */
export function plainProbability(
  { logExcess, siteHalfLife, soilSpread }: PlainTreatment,
  { sums, base }: CourseOfSums,
  offset: number,
): number {
  const breakdownDays = sums[base + offset] - sums[base];
  return carryoverOfOnePart(logExcess, (Math.LN2 / siteHalfLife) * breakdownDays, soilSpread);
}

/**
 * Odds of a stretch at an offset: the weighted mean of its years' probabilities. [0-1] Once a part of the sum is over the
 * limit, so is the whole, for no term is negative: what comes back may then be that part.
 */
export type MeanOdds = (stretch: Stretch, offset: number, limit: number) => number;

/** Mean odds of years with any course of probability. @param probability of harm in a year, by its place, at an offset [0-1] */
export const meanOddsOf =
  (probability: (year: number, offset: number) => number): MeanOdds =>
  ({ kept, relative, total }, offset, limit) => {
    let sum = 0;
    for (let k = 0; k < kept.length; k++) {
      sum += relative[k] * probability(kept[k], offset);
      if (sum / total > limit) break;
    }
    return sum / total;
  };

/** Mean odds of one treatment on bare soil: {@link meanOddsOf} its {@link plainProbability}, without a call for each year. */
export const plainMeanOdds =
  ({ logExcess, siteHalfLife, soilSpread }: PlainTreatment, courses: readonly CourseOfSums[]): MeanOdds =>
  (stretch, offset, limit) =>
    meanCarryover(
      courses,
      stretch,
      offset,
      { logExcess, ratePerDay: Math.LN2 / siteHalfLife, soilSpread },
      limit,
    );

/** A stretch of offsets over which the same years stand. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
  readonly kept: readonly number[];
  readonly relative: Float64Array;
  readonly total: number;
}

/** Odds over one set of years; the same figures as the whole curve gives. */
export interface QuickCurve {
  /** The last offset that enough years reach [d]. */
  readonly lastOffset: number;
  /** Odds at an offset, which must not lie beyond the last. [0-1] */
  at(offset: number): number;
  /** First offset, from `fromOffset` on, from which the odds stay at or under the limit; null where there is none. */
  clearOffset(fromOffset: number, limit: number): number | null;
}

/**
 * The odds curve without its days: a year whose record has run out drops out while at least ten remain, and between
 * two such days the odds only fall once no more spray is on leaves.
 *
 * @param fallsFrom offset from which each year's probability only falls [d]; 0 on bare ground
 */
export function quickCurve(stretches: readonly Stretch[], meanOdds: MeanOdds, fallsFrom: number): QuickCurve {
  const lastStretch = stretches[stretches.length - 1];
  return {
    lastOffset: lastStretch.last,
    at(offset) {
      const stretch = stretches.find(({ last }) => offset <= last) ?? lastStretch;
      return meanOdds(stretch, offset, Number.POSITIVE_INFINITY);
    },
    clearOffset(fromOffset, limit) {
      let clear: number | null = null;
      for (const stretch of stretches.toReversed()) {
        const first = Math.max(stretch.first, fromOffset);
        const within = (offset: number) => meanOdds(stretch, offset, limit) <= limit;
        const held = heldFrom(within, first, stretch.last, fallsFrom);
        if (held === null) return clear;
        clear = held;
        if (clear > first) return clear;
      }
      return clear;
    },
  };
}

/**
 * First offset of a stretch from which something holds to its end, where from `fallsFrom` on it keeps holding once it
 * does; null where it does not hold at the end.
 */
export function heldFrom(
  within: (offset: number) => boolean,
  first: number,
  last: number,
  fallsFrom: number,
): number | null {
  if (last < first || !within(last)) return null;
  const falling = Math.min(Math.max(first, fallsFrom), last);
  // More than half of all searches end where they begin: a label date is often late enough.
  if (!within(falling)) return firstThatHolds(within, falling + 1, last);
  let held = falling;
  while (held > first && within(held - 1)) held--;
  return held;
}

/** The first offset that holds, where the last does and every one after the first does too. */
function firstThatHolds(holds: (offset: number) => boolean, first: number, last: number): number {
  let low = first;
  let high = last;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * The stretches of a search, first to last.
 *
 * @param reach last offset of each year's record [d]
 * @param horizonOffset last offset looked at [d]
 */
export function stretchesOf(
  reach: readonly number[],
  weights: Float64Array,
  horizonOffset: number,
): Stretch[] {
  const needed = Math.min(LEAST_YEARS, reach.length);
  const end = Math.min(horizonOffset, reach.toSorted((a, b) => b - a)[needed - 1]);
  const ends = [...new Set([...reach.filter((offset) => offset < end), end])].sort((a, b) => a - b);
  return ends.map((last, index) => {
    const kept = reach.map((_, year) => year).filter((year) => reach[year] >= last);
    return { first: index === 0 ? 0 : ends[index - 1] + 1, last, kept, ...relativeWeights(kept, weights) };
  });
}
