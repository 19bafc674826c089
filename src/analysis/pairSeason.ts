import { labelDateOf } from '../model/calendar/interval.ts';
import { daysToCleanLeaves } from '../model/deposit/leafWashOff.ts';
import { logLabelMargin } from '../model/odds/labelMargin.ts';
import { oddsRange } from '../model/odds/oddsRange.ts';
import { weightedMean } from '../model/years/weightedMean.ts';
import { type Application, labelDayOf } from './applications.ts';
import type { HistoricalYear } from './historicalYears.ts';
import { meanOddsOf, plainMeanOdds, plainProbability, type QuickCurve, quickCurve } from './quickCurve.ts';
import { residueCourse } from './residueCourse.ts';
import { HORIZON_AFTER_LABEL_MONTHS, HORIZON_MONTHS } from './seasonOdds.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { TraceSet } from './seasonTraceSet.ts';
import type { ThirdName } from './thirds.ts';
import { sharedYearFrame, type YearFrame, yearFrame } from './yearFrame.ts';

/** Odds and dates of one residual before one crop, for any planting date. */
export interface PairSeason {
  /** Day from which offsets count: the first application's. [day number] */
  readonly firstDay: number;
  readonly labelOffset: number;
  /** The answer for a planting date, as {@link seasonOdds} gives it. */
  at(plantDay: number): PairAnswer;
}

export interface PairAnswer {
  readonly oddsAtPlanting: number;
  readonly years: number;
  /** Odds at planting in a third of the years. [0-1] */
  thirdOdds(name: ThirdName): number;
  range(): { readonly low: number; readonly high: number };
  oddsAtLabel(): number;
  clearOffset(): number | null;
}

/** A set of years with all that does not hang on the planting date. */
interface YearSet {
  readonly years: readonly HistoricalYear[];
  readonly weights: Float64Array;
  /** Probability of harm in a year, by its place, at an offset [0-1]. */
  readonly probability: (year: number, offset: number) => number;
  readonly thirds: YearFrame['thirds'];
  readonly curve: QuickCurve;
  clear?: number | null;
}

/** The question without what stands in the application and the planting date. */
export type PairQuestion = Pick<SeasonQuestion, 'oddsLimit' | 'outlook' | 'assumptions'>;

/** Last offset that a question looks at. [d] */
export function pairHorizon(application: Application, plantDay: number): number {
  const { appliedDay } = application;
  const months = (from: number, n: number) => labelDateOf(from, { months: n, days: 0 });
  return (
    Math.max(
      months(appliedDay, HORIZON_MONTHS),
      months(labelDayOf(application), HORIZON_AFTER_LABEL_MONTHS),
      plantDay,
    ) - appliedDay
  );
}

/**
 * One residual before one crop, over shared traces and without evidence: the same figures as {@link seasonOdds} without
 * working out every day of the curve. Planting dates that leave the same usable years share everything but the odds on
 * the day itself.
 *
 * @throws {MissingDataError} TOO_FEW_YEARS, from `at`
 */
export function pairSeason(set: TraceSet, application: Application, question: PairQuestion): PairSeason {
  const { appliedDay } = application;
  const labelOffset = labelDayOf(application) - appliedDay;
  const known = new Map<readonly HistoricalYear[], Map<string, YearSet>>();

  const yearSetOf = (plantDay: number): YearSet => {
    const plantOffset = plantDay - appliedDay;
    const years = set.years(Math.max(labelOffset, plantOffset) + 1);
    const horizon = pairHorizon(application, plantDay);
    const byDate = hangsOnDate(question.outlook) ? plantOffset : '';
    const ofYears = known.get(years) ?? new Map<string, YearSet>();
    known.set(years, ofYears);
    const key = `${horizon} ${byDate}`;
    // Where each date has weights of its own, only the last date's are kept.
    if (byDate !== '' && !ofYears.has(key)) ofYears.clear();
    const found =
      ofYears.get(key) ?? workOut(set, application, question, labelOffset, years, plantOffset, horizon);
    ofYears.set(key, found);
    return found;
  };

  // Crops with one interval ask for one date, one after the other.
  let last: { readonly plantDay: number; readonly answer: PairAnswer } | undefined;
  return {
    firstDay: appliedDay,
    labelOffset,
    at(plantDay) {
      if (last?.plantDay === plantDay) return last.answer;
      const yearSet = yearSetOf(plantDay);
      const answer = answerOf(yearSet, plantDay - appliedDay, labelOffset, question.oddsLimit);
      last = { plantDay, answer };
      return answer;
    },
  };
}

/** An outlook without a window of its own speaks of the days to planting. */
const hangsOnDate = (outlook: PairQuestion['outlook']): boolean =>
  outlook !== undefined && outlook.toDay === undefined;

function workOut(
  set: TraceSet,
  application: Application,
  { assumptions, outlook }: PairQuestion,
  labelOffset: number,
  years: readonly HistoricalYear[],
  plantOffset: number,
  horizon: number,
): YearSet {
  const { response, halfLife, siteFactor, load, canopyFraction, appliedDay, interval } = application;
  const intervalDays = labelDateOf(appliedDay, interval) - appliedDay;
  const demand = set.demand(response, years, intervalDays);
  const logMargin = logLabelMargin(demand, halfLife, assumptions.soilSpread, assumptions.labelMargin);
  const traces = set.traces(response, years);
  const siteHalfLife = halfLife * siteFactor;
  const { soilSpread } = assumptions;
  const plain = { logExcess: logMargin + Math.log(load), siteHalfLife, soilSpread };
  const courses =
    canopyFraction === 0
      ? null
      : traces.map((trace) =>
          residueCourse(
            [{ trace, offsetDays: 0, logMargin, load, canopyFraction, siteHalfLife }],
            soilSpread,
            assumptions,
          ),
        );
  const probability = courses
    ? (year: number, offset: number) => courses[year](offset)
    : (year: number, offset: number) => plainProbability(plain, traces[year], offset);
  const fallsFrom = courses ? daysToCleanLeaves(assumptions.foliageHalfLifeDays) + 1 : 0;
  const frameOf = hangsOnDate(outlook) ? yearFrame : sharedYearFrame;
  const { weights, thirds, stretches } = frameOf(set.climate, {
    ...{ years, traces, appliedDay, plantOffset, outlook },
    ...{ labelOffset, horizonOffset: horizon },
  });
  return {
    years,
    weights,
    probability,
    thirds,
    curve: quickCurve(stretches, courses ? meanOddsOf(probability) : plainMeanOdds(plain, traces), fallsFrom),
  };
}

function answerOf(yearSet: YearSet, plantOffset: number, labelOffset: number, oddsLimit: number): PairAnswer {
  const { years, weights, probability, thirds, curve } = yearSet;
  const probabilities = years.map((_, year) => probability(year, plantOffset));
  const oddsAtPlanting = weightedMean(probabilities, weights);
  let range: ReturnType<typeof oddsRange> | undefined;
  return {
    oddsAtPlanting,
    years: years.length,
    thirdOdds: (name) => {
      const third = thirds.find((one) => one.name === name);
      const own = third?.members.map((index) => probabilities[index]) ?? [];
      return weightedMean(own, third?.weights ?? []);
    },
    range() {
      range ??= oddsRange(probabilities, weights, oddsAtPlanting);
      return range;
    },
    oddsAtLabel: () => curve.at(labelOffset),
    clearOffset: () => {
      if (yearSet.clear === undefined) yearSet.clear = curve.clearOffset(labelOffset, oddsLimit);
      return yearSet.clear;
    },
  };
}
