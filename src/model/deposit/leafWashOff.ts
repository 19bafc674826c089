import { foliageFractionLeft } from './foliageDecay.ts';
import { washOffFraction } from './washOff.ts';

/** Share of the intercepted dose below which the leaves count as clean. */
const CLEAN_SHARE = 0.001;

/** Days after which leaves hold less than that whatever the rain. [d] */
export const daysToCleanLeaves = (halfLifeDays: number): number =>
  Math.ceil(halfLifeDays * Math.log2(1 / CLEAN_SHARE));

/** A share of the dose on leaves that rain brought down. */
export interface WashedPart {
  /** Days from the application to the day it reached the soil [d], >= 1. */
  readonly offsetDays: number;
  /** Share of the dose that the leaves caught [0-1]. */
  readonly share: number;
}

/** The course of spray caught by leaves, in shares of what they caught. */
export interface LeafCourse {
  readonly washed: readonly WashedPart[];
  /** Share still on the leaves at the start of day `offset` after application, decay to that day included; 0 once clean. */
  readonly left: Float64Array;
}

/**
 * What rain washes from leaves, day by day. [shares of the intercepted dose]
 *
 * Equation   each day after the application: pool ·= 2^(−1/h); washed = pool·(1 − e^(−w P)); pool −= washed
 * Symbols    h = halfLifeDays on leaves [d], 10; w = washOffPerMm [1/mm], 0.05; P = rain, not snow [mm]
 * Valid      followed until 0.1 % is left or the run of days ends
 * Source     default half-life: open data set on foliar dissipation, 2018 (abstract); wash-off: FOCUS default
 * Checked    test/published/foliage.json (C-FOL-1, C-WO-1) through its parts
 *
 * @param liquidRainMm rain from the application day (index 0) on [mm]
 * @example leafWashOff(Float64Array.of(0, 10, 0), 10, 0.05).washed // [{ offsetDays: 1, share: 0.36712 }]
 */
export function leafWashOff(
  liquidRainMm: Float64Array,
  halfLifeDays: number,
  washOffPerMm: number,
): LeafCourse {
  const washed: WashedPart[] = [];
  const left = new Float64Array(liquidRainMm.length + 1);
  const dailyLeft = foliageFractionLeft(1, halfLifeDays);
  left[0] = 1;
  let pool = 1;
  for (let offset = 1; offset < left.length; offset++) {
    pool *= dailyLeft;
    left[offset] = pool;
    if (pool < CLEAN_SHARE || offset === liquidRainMm.length) break;
    const share = pool * washOffFraction(liquidRainMm[offset], washOffPerMm);
    if (share > 0) washed.push({ offsetDays: offset, share });
    pool -= share;
  }
  return { washed, left };
}
