import type { HistoricalYear } from './historicalYears.ts';
import { type Stretch, stretchesOf } from './quickCurve.ts';
import { THIRD_NAMES, type ThirdName, warmRainThirds } from './thirds.ts';

/** What a frame is made of. */
export interface FramedYears {
  readonly years: readonly HistoricalYear[];
  readonly weights: Float64Array;
  /** Last offset of each year's record [d]. */
  readonly reach: readonly number[];
  /** Days from the application to the label date; thirds go by the warm rain of these days. [d] */
  readonly labelOffset: number;
  /** Last offset looked at. [d] */
  readonly horizonOffset: number;
}

/** What some years bring to every residual that is judged by them. */
export interface YearFrame {
  /** The years of each third with their weights. */
  readonly thirds: readonly Third[];
  /** The stretches of offsets over which the same years stand. */
  readonly stretches: readonly Stretch[];
}

export interface Third {
  readonly name: ThirdName;
  readonly members: readonly number[];
  readonly weights: readonly number[];
}

/** Works a frame out. @param warmRain running sum of the record's warm rain [mm] */
export function yearFrame(
  warmRain: Float64Array,
  { years, weights, reach, labelOffset, horizonOffset }: FramedYears,
): YearFrame {
  return {
    thirds: thirdsWith(warmRainThirds(warmRain, years, labelOffset), weights),
    stretches: stretchesOf(reach, weights, horizonOffset),
  };
}

const known = new WeakMap<readonly HistoricalYear[], Map<string, YearFrame>>();

/**
 * As {@link yearFrame}, remembered for a list of years, which belongs to one season: all its residuals have the same
 * weights then, and the same reach. Not for weights that hang on the planting date.
 */
export function sharedYearFrame(warmRain: Float64Array, framed: FramedYears): YearFrame {
  const frames = known.get(framed.years) ?? new Map<string, YearFrame>();
  known.set(framed.years, frames);
  const key = `${framed.labelOffset} ${framed.horizonOffset}`;
  const frame = frames.get(key) ?? yearFrame(warmRain, framed);
  frames.set(key, frame);
  return frame;
}

/** The members of each third; equal weights where an outlook rules the whole third out. */
function thirdsWith(names: readonly ThirdName[], weights: Float64Array): Third[] {
  return THIRD_NAMES.map((name) => {
    const members = names.map((_, index) => index).filter((index) => names[index] === name);
    const own = members.map((index) => weights[index]);
    return { name, members, weights: own.some((weight) => weight > 0) ? own : own.map(() => 1) };
  });
}
