import type { HistoricalYear } from './historicalYears.ts';
import { type Stretch, stretchesOf } from './quickCurve.ts';
import type { StationClimate } from './stationClimate.ts';
import { THIRD_NAMES, type ThirdName, warmRainThirds } from './thirds.ts';
import type { Trace } from './traces.ts';
import { type OutlookQuestion, yearWeights } from './yearWeights.ts';

/** What a frame is made of. */
export interface FramedYears {
  readonly years: readonly HistoricalYear[];
  /** Each year's course, in the order of the years. */
  readonly traces: readonly Pick<Trace, 'lastOffset'>[];
  readonly appliedDay: number;
  readonly plantOffset: number;
  readonly outlook?: OutlookQuestion;
  /** Days from the application to the label date; thirds go by the warm rain of these days. [d] */
  readonly labelOffset: number;
  /** Last offset looked at. [d] */
  readonly horizonOffset: number;
}

/** What some years bring to every residual that is judged by them. */
export interface YearFrame {
  readonly weights: Float64Array;
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

/** Works a frame out. @throws {InvalidInputError} as {@link yearWeights} */
export function yearFrame(climate: StationClimate, framed: FramedYears): YearFrame {
  const { years, traces, appliedDay, plantOffset, outlook, labelOffset, horizonOffset } = framed;
  const weights = yearWeights(climate, years, plantOffset, appliedDay, outlook);
  const reach = traces.map(({ lastOffset }) => lastOffset);
  return {
    weights,
    thirds: thirdsWith(warmRainThirds(climate.warmRain, years, labelOffset), weights),
    stretches: stretchesOf(reach, weights, horizonOffset),
  };
}

const known = new WeakMap<readonly HistoricalYear[], Map<string, YearFrame>>();

/**
 * As {@link yearFrame}, remembered for a list of years, which belongs to one season: all its residuals have the same
 * weights then, and the same reach. Not for weights that hang on the planting date.
 */
export function sharedYearFrame(climate: StationClimate, framed: FramedYears): YearFrame {
  const frames = known.get(framed.years) ?? new Map<string, YearFrame>();
  known.set(framed.years, frames);
  const key = `${framed.labelOffset} ${framed.horizonOffset}`;
  const frame = frames.get(key) ?? yearFrame(climate, framed);
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
