import { median } from '../model/odds/quantile.ts';
import { weightedMean } from '../model/years/weightedMean.ts';
import type { HistoricalYear } from './historicalYears.ts';
import type { YearCourse } from './yearCourses.ts';

export const THIRD_NAMES = ['dry', 'middle', 'wet'] as const;
export type ThirdName = (typeof THIRD_NAMES)[number];

/** The answer in a third of the years. */
export interface ThirdAnswer {
  readonly name: ThirdName;
  readonly years: readonly number[];
  /** Weighted mean probability at planting [0-1]. */
  readonly odds: number;
  /** Median of the years' own days to clear [d]; Infinity where half of them never clear; null where no record reaches. */
  readonly medianDaysToClear: number | null;
  /** Median warm rain from application to label date [mm]. */
  readonly warmRainMm: number;
}

/** Which third each year belongs to: the lowest ⌊n/3⌋ by warm rain are dry, the highest ⌊n/3⌋ wet. */
export function thirdNames(warmRainMm: readonly number[]): ThirdName[] {
  const size = Math.floor(warmRainMm.length / 3);
  const order = warmRainMm.map((_, index) => index).sort((a, b) => warmRainMm[a] - warmRainMm[b] || a - b);
  const names = new Array<ThirdName>(warmRainMm.length);
  order.forEach((index, rank) => {
    names[index] = rank < size ? 'dry' : rank >= warmRainMm.length - size ? 'wet' : 'middle';
  });
  return names;
}

const known = new WeakMap<readonly HistoricalYear[], Map<number, readonly ThirdName[]>>();

/**
 * Which third each year belongs to by its own warm rain from the application on; remembered for a list of years, which
 * belongs to one record and season.
 *
 * @param warmRain running sum of the record's warm rain [mm]
 * @param days counted from the application [d]
 */
export function warmRainThirds(
  warmRain: Float64Array,
  years: readonly HistoricalYear[],
  days: number,
): readonly ThirdName[] {
  const byDays = known.get(years) ?? new Map<number, readonly ThirdName[]>();
  known.set(years, byDays);
  const names =
    byDays.get(days) ?? thirdNames(years.map(({ start }) => warmRain[start + days] - warmRain[start]));
  byDays.set(days, names);
  return names;
}

/** Odds, days to clear and warm rain of the dry, middle and wet third of the years. */
export function thirdsOf(
  years: readonly YearCourse[],
  weights: Float64Array,
  plantOffset: number,
): ThirdAnswer[] {
  const names = thirdNames(years.map((year) => year.warmRainMm));
  return THIRD_NAMES.map((name) => {
    const members = years.map((_, index) => index).filter((index) => names[index] === name);
    const clear = members.map((index) => years[index].clearOffset).filter((offset) => offset !== null);
    return {
      name,
      years: members.map((index) => years[index].year),
      odds: weightedMean(
        members.map((index) => years[index].probabilityAt(plantOffset)),
        weightsOf(members, weights),
      ),
      medianDaysToClear: clear.length > 0 ? median(clear) : null,
      warmRainMm: median(members.map((index) => years[index].warmRainMm)),
    };
  });
}

/** The members' weights; equal ones where an outlook rules the whole third out, so that it still has an answer. */
function weightsOf(members: readonly number[], weights: Float64Array): number[] {
  const own = members.map((index) => weights[index]);
  return own.some((weight) => weight > 0) ? own : own.map(() => 1);
}
