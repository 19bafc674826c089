import { MissingDataError } from '../errors.ts';
import { type ProbabilityInterval, wilsonInterval } from '../model/odds/wilsonInterval.ts';
import type { OwnAmount } from '../model/weather/ownRecords.ts';
import { effectiveYears } from '../model/years/effectiveYears.ts';
import { weightedMean } from '../model/years/weightedMean.ts';
import { RAIN_FILLED } from '../schema/codes.ts';
import { hasReached } from './hasReached.ts';
import { type HistoricalYear, historicalYears, LEAST_YEARS } from './historicalYears.ts';
import type { StationClimate } from './stationClimate.ts';
import { type OutlookQuestion, yearWeights } from './yearWeights.ts';

/** The weather that sums of water are taken from: a season, its observed days and the years that stand for the rest. */
export interface WaterSeason {
  readonly climate: StationClimate;
  /** Day of the season whose calendar date begins each year's own course [day number]. */
  readonly firstDay: number;
  /** Last observed day; absent while planning. */
  readonly asOfDay?: number;
  readonly restOfSeasonRain: number;
  /** Water given to the field; counted where a sum asks for it. */
  readonly irrigation: readonly OwnAmount[];
  readonly base: { readonly from?: number; readonly to?: number };
  readonly outlook?: OutlookQuestion;
  /** Planting [day number]; the outlook's own window ends before it where none is given. */
  readonly plantDay: number;
}

/** Days of the season that a sum is taken over, both included [day numbers]. */
export interface WaterWindow {
  readonly fromDay: number;
  readonly toDay: number;
  readonly withIrrigation: boolean;
}

/** How a sum stands against what is asked for. */
export interface WaterJudgement {
  readonly state: 'met' | 'not met' | 'open';
  /** Water of the window that is observed [mm]; null while none of its days are. */
  readonly amountMm: number | null;
  /** Share of the years in which the sum is reached, observed days included; null with too few usable years. */
  readonly odds: number | null;
  /** Its Wilson interval; null too where what is observed decides it. */
  readonly range: (ProbabilityInterval & { readonly years: number }) | null;
}

/**
 * Water of a window against a least sum: observed days as they were, each year's own rain on all others.
 *
 * Equation   Σ water over the window >= least sum, year by year; odds = weighted share of years
 * Valid      a gap in the observed rain takes each year's own day; a window that is over is decided where all years agree
 * Source     the same rule of traces as the odds of carryover; Wilson interval
 */
export function judgeWater(season: WaterSeason, window: WaterWindow, leastMm: number): WaterJudgement {
  const { asOfDay } = season;
  if (window.toDay < window.fromDay) return { state: 'not met', amountMm: 0, odds: 0, range: null };
  const amountMm = observedMm(season, window);
  const over = asOfDay !== undefined && asOfDay >= window.toDay;
  const there = amountMm !== null && hasReached(amountMm, leastMm);
  if (there || (over && isObservedThroughout(season, window))) {
    return { state: there ? 'met' : 'not met', amountMm, odds: there ? 1 : 0, range: null };
  }
  const courses = yearsOf(season, Math.max(window.toDay, season.plantDay));
  if (courses === null) return { state: 'open', amountMm, odds: null, range: null };
  const reached = courses.years.map((year) => (hasReached(sumOf(season, window, year), leastMm) ? 1 : 0));
  const allAre = (value: number) => over && reached.every((one) => one === value);
  const state = allAre(1) ? 'met' : allAre(0) ? 'not met' : 'open';
  return { state, amountMm, ...shareOf(reached, courses.weights) };
}

/** Day on which a running sum is reached, and how sure that is. */
export interface ReachedDay {
  /** The day itself where it is observed; null while it is to come. */
  readonly observedDay: number | null;
  /** Day by which all but a share of the years have reached it; null where they do not within the search. */
  readonly safeDay: number | null;
  /** Share of the years that reach it by a day, with its interval; null with too few usable years. */
  by(day: number): Pick<WaterJudgement, 'odds' | 'range'>;
}

/** Days from its start on that a running sum is followed. [d] */
export const SEARCH_DAYS = 1096;

/**
 * The day on which water since a day adds up to a least sum. A year drops out where its record ends; under ten years say
 * nothing.
 *
 * @param acceptedShare share of the years that may be later than the safe day [0-1]
 */
export function dayReached(
  season: WaterSeason,
  { fromDay, withIrrigation }: Omit<WaterWindow, 'toDay'>,
  leastMm: number,
  acceptedShare: number,
): ReachedDay {
  const { asOfDay = fromDay - 1 } = season;
  const observedDay = firstDayOf(fromDay, asOfDay, leastMm, (day) => observedOn(season, day, withIrrigation));
  if (observedDay !== null) {
    const by = (day: number) => ({ odds: day >= observedDay ? 1 : 0, range: null });
    return { observedDay, safeDay: observedDay, by };
  }
  const courses = yearsOf(season, season.plantDay);
  if (courses === null) return { observedDay, safeDay: null, by: () => ({ odds: null, range: null }) };
  const lastDay = fromDay + SEARCH_DAYS;
  const years = courses.years.map((year, index) => ({
    reachedDay:
      firstDayOf(fromDay, lastDay, leastMm, (day) => waterOn(season, year, day, withIrrigation)) ??
      Number.POSITIVE_INFINITY,
    lastDay: season.firstDay + season.climate.series.days - 1 - year.start,
    weight: courses.weights[index],
  }));
  const by = (day: number): Pick<WaterJudgement, 'odds' | 'range'> => {
    const known = years.filter((year) => year.lastDay >= day);
    const weights = Float64Array.from(known, ({ weight }) => weight);
    if (known.length < LEAST_YEARS || !weights.some((weight) => weight > 0))
      return { odds: null, range: null };
    return shareOf(
      known.map(({ reachedDay }) => (reachedDay <= day ? 1 : 0)),
      weights,
    );
  };
  const isSafe = (day: number) => (by(day).odds ?? 0) >= 1 - acceptedShare - 1e-9;
  const safe = years
    .map(({ reachedDay }) => reachedDay)
    .toSorted((a, b) => a - b)
    .find((day) => Number.isFinite(day) && isSafe(day));
  return { observedDay, safeDay: safe ?? null, by };
}

function yearsOf(
  season: WaterSeason,
  lastDay: number,
): { years: readonly HistoricalYear[]; weights: Float64Array } | null {
  const { climate, firstDay, base, outlook, plantDay } = season;
  try {
    const years = historicalYears(climate, firstDay, Math.max(1, lastDay - firstDay + 1), base);
    return { years, weights: yearWeights(climate, years, plantDay - firstDay, firstDay, outlook) };
  } catch (error) {
    if (error instanceof MissingDataError) return null;
    throw error;
  }
}

function shareOf(reached: readonly number[], weights: Float64Array) {
  const odds = weightedMean(reached, weights);
  const n = effectiveYears(weights);
  const range = wilsonInterval(Math.min(n, Math.max(0, odds * n)), n);
  return { odds, range: { ...range, years: reached.length } };
}

function sumOf(season: WaterSeason, { fromDay, toDay, withIrrigation }: WaterWindow, year: HistoricalYear) {
  const { asOfDay = fromDay - 1, irrigation } = season;
  if (withIrrigation && irrigation.length > 0) return summed(season, year, fromDay, toDay, withIrrigation);
  const toCome = Math.max(fromDay, asOfDay + 1);
  return rainToCome(
    season,
    year,
    toCome,
    toDay,
    summed(season, year, fromDay, Math.min(asOfDay, toDay), false),
  );
}

/** Water of some days along a year's course. [mm] */
function summed(
  season: WaterSeason,
  year: HistoricalYear,
  fromDay: number,
  toDay: number,
  withIrrigation: boolean,
): number {
  let sum = 0;
  for (let day = fromDay; day <= toDay; day++) sum += waterOn(season, year, day, withIrrigation) ?? 0;
  return sum;
}

/** {@link summed} of days of which nothing is observed and on which nothing is given, on top of a sum: most days of most sums. [mm] */
function rainToCome(
  { climate: { series }, firstDay, restOfSeasonRain }: WaterSeason,
  { start }: HistoricalYear,
  fromDay: number,
  toDay: number,
  before: number,
): number {
  let sum = before;
  const end = Math.min(start + toDay - firstDay, series.days - 1);
  for (let index = Math.max(0, start + fromDay - firstDay); index <= end; index++) {
    sum += series.rainMm[index] * restOfSeasonRain;
  }
  return sum;
}

function observedMm(season: WaterSeason, { fromDay, toDay, withIrrigation }: WaterWindow): number | null {
  const { asOfDay } = season;
  if (asOfDay === undefined || asOfDay < fromDay) return null;
  let sum = 0;
  for (let day = fromDay; day <= Math.min(toDay, asOfDay); day++) {
    sum += observedOn(season, day, withIrrigation) ?? 0;
  }
  return sum;
}

/** First day on which the running sum is there; null where it is not, or the course ends before. */
function firstDayOf(
  fromDay: number,
  toDay: number,
  leastMm: number,
  mmOn: (day: number) => number | null,
): number | null {
  let sum = 0;
  for (let day = fromDay; day <= toDay; day++) {
    sum += mmOn(day) ?? 0;
    if (hasReached(sum, leastMm)) return day;
  }
  return null;
}

/** Water that is known to have come on a day; null where its rain was not observed. [mm] */
function observedOn(season: WaterSeason, day: number, withIrrigation: boolean): number | null {
  const rain = isObserved(season, day)
    ? season.climate.series.rainMm[day - season.climate.series.firstDay]
    : null;
  const given = withIrrigation ? givenOn(season, day) : 0;
  return rain === null ? (given > 0 ? given : null) : rain + given;
}

/** Water of a day along a year's course; null past the end of its record. [mm] */
function waterOn(
  season: WaterSeason,
  { start }: HistoricalYear,
  day: number,
  withIrrigation: boolean,
): number | null {
  const { series } = season.climate;
  const given = withIrrigation ? givenOn(season, day) : 0;
  if (isObserved(season, day)) return series.rainMm[day - series.firstDay] + given;
  const index = start + day - season.firstDay;
  return index < 0 || index >= series.days ? null : series.rainMm[index] * season.restOfSeasonRain + given;
}

function isObservedThroughout(season: WaterSeason, { fromDay, toDay }: WaterWindow): boolean {
  for (let day = fromDay; day <= toDay; day++) if (!isObserved(season, day)) return false;
  return true;
}

function isObserved({ climate: { series }, asOfDay }: WaterSeason, day: number): boolean {
  const index = day - series.firstDay;
  return (
    asOfDay !== undefined &&
    day <= asOfDay &&
    index >= 0 &&
    index < series.days &&
    series.rainOrigin[index] !== RAIN_FILLED
  );
}

/** Irrigation by day, worked out once for each list. */
const byDay = new WeakMap<readonly OwnAmount[], ReadonlyMap<number, number>>();

function givenOn({ irrigation }: WaterSeason, day: number): number {
  let days = byDay.get(irrigation);
  if (days === undefined) {
    const sums = new Map<number, number>();
    for (const one of irrigation) sums.set(one.day, (sums.get(one.day) ?? 0) + one.mm);
    days = sums;
    byDay.set(irrigation, days);
  }
  return days.get(day) ?? 0;
}
