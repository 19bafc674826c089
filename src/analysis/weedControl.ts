import { median } from '../model/odds/quantile.ts';
import { type ProbabilityInterval, wilsonInterval } from '../model/odds/wilsonInterval.ts';
import { effectiveYears } from '../model/years/effectiveYears.ts';
import { weightedMean } from '../model/years/weightedMean.ts';
import type { CourseOfSums } from './quickCurve.ts';
import type { ThirdName } from './thirds.ts';
import type { Trace } from './traces.ts';

/** Weeks until little enough is left that weeds come through; Infinity where that lies past the horizon. */
export interface ControlWeeks {
  readonly middle: number;
  readonly dry: number;
  readonly wet: number;
}

/**
 * Weeks of weed control in the median soil: median of the years, and of the dry and the wet third of them. [weeks]
 *
 * Equation   first day with W >= h_s·log2(1/f), over 7
 * Symbols    f = fractionLeft of the dose at which control ends [-], above 0 and below 1; h_s = siteHalfLife
 *            [breakdown days]; W = breakdown days since the application
 * Valid      spray on bare ground; a planning figure, not a label claim
 * Source     assumption of our own: 25 % left
 * Checked    test/analysis/weedControl.test.ts
 *
 * @param names the third that each year belongs to, by warm rain over the season asked about
 */
export function controlWeeks(
  years: readonly (CourseOfSums & { readonly lastOffset: number })[],
  names: readonly ThirdName[],
  siteHalfLife: number,
  fractionLeft: number,
): ControlWeeks {
  const needed = siteHalfLife * Math.log2(1 / fractionLeft);
  const weeks = years.map((year) => daysUntil(year, needed) / 7);
  const medianOf = (name: ThirdName) => median(weeks.filter((_, year) => names[year] === name));
  return { middle: median(weeks), dry: medianOf('dry'), wet: medianOf('wet') };
}

/**
 * Days until a year's breakdown days come to a sum; Infinity where its record ends before. [d] Halved here, since a function
 * for each year to halve with was 7 % of all that a comparison allocates.
 */
function daysUntil(
  { sums, base, lastOffset }: CourseOfSums & { readonly lastOffset: number },
  breakdownDays: number,
): number {
  let low = 0;
  let high = lastOffset + 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sums[base + middle] - sums[base] >= breakdownDays) high = middle;
    else low = middle + 1;
  }
  return low > lastOffset ? Number.POSITIVE_INFINITY : low;
}

/** Odds that rain or irrigation puts the residual to work in time. */
export interface Activation {
  readonly odds: number;
  readonly range: ProbabilityInterval;
}

/**
 * Odds of enough water soon enough after the application, over the years. [0-1]
 *
 * Equation   weighted share of years with Σ rain of days 0 … n − 1 >= amount; Wilson interval on the effective years
 * Symbols    neededMm [mm], 13; withinDays = n [d], 14; rain that falls as rain, and irrigation
 * Valid      at least one year with weight
 * Source     half an inch to an inch within two weeks puts a soil residual to work: common practice
 * Checked    test/analysis/weedControl.test.ts
 */
export function activationOdds(
  years: readonly Pick<Trace, 'liquidRainMm'>[],
  weights: Float64Array,
  neededMm: number,
  withinDays: number,
): Activation {
  const came = years.map((year) => {
    const mm = year.liquidRainMm(0, withinDays).reduce((sum, rain) => sum + rain, 0);
    return mm >= neededMm ? 1 : 0;
  });
  const odds = weightedMean(came, weights);
  const n = effectiveYears(weights);
  return { odds, range: wilsonInterval(Math.min(n, odds * n), n) };
}
