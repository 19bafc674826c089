import { labelDateOf } from '../model/calendar/interval.ts';
import { oddsRange } from '../model/odds/oddsRange.ts';
import { median } from '../model/odds/quantile.ts';
import { weightedMean } from '../model/years/weightedMean.ts';
import { labelDayOf } from './applications.ts';
import { type OddsCurve, oddsCurve } from './oddsCurve.ts';
import { meanOddsOf, quickCurve, stretchesOf } from './quickCurve.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { StationClimate } from './stationClimate.ts';
import { type ThirdAnswer, thirdsOf } from './thirds.ts';
import {
  carryoverYears,
  type JudgedApplication,
  type SeasonOffsets,
  type YearCourse,
} from './yearCourses.ts';
import { yearWeights } from './yearWeights.ts';

/** Months past the first application that the clear date is looked for. */
export const HORIZON_MONTHS = 36;
/** Months past the label date that it is looked for where the label itself is long. */
export const HORIZON_AFTER_LABEL_MONTHS = 12;

/** Odds and dates of one question; offsets are days from `firstDay`, the first application. */
export interface SeasonOdds {
  readonly firstDay: number;
  readonly labelOffset: number;
  readonly plantOffset: number;
  /** Last offset looked at. */
  readonly horizonOffset: number;
  /** Demand of each application [breakdown days]. */
  readonly demands: readonly number[];
  /** The applications with their demands and traces, in the order of the question. */
  readonly judged: readonly JudgedApplication[];
  /** Odds at planting before any evidence, then after the first finding by date, the first two, … [0-1]. */
  readonly oddsByEvidence: readonly number[];
  readonly oddsAtPlanting: number;
  readonly oddsAtLabel: number;
  readonly range: { readonly low: number; readonly high: number };
  /** First offset from the label date on from which the odds stay at or under the limit; null where there is none. */
  readonly clearOffset: number | null;
  /** Why there is no clear offset: the horizon, or too few years left to tell. */
  readonly searchEnded: 'horizon' | 'record';
  readonly medianBreakdownDays: number;
  readonly years: readonly YearCourse[];
  readonly weights: Float64Array;
  readonly thirds: readonly ThirdAnswer[];
  /** Odds at an offset, up to the last that enough years reach [0-1]. */
  oddsAt(offset: number): number;
  /** Odds on every day; worked out when it is first asked for. */
  readonly curve: OddsCurve;
  /** Days from the first application that are observed. */
  readonly observedDays: number;
}

/** The first application's day, and offsets of label date, planting and the end of the search from it. */
export function seasonHorizon({ applications, plantDay }: SeasonQuestion): SeasonOffsets {
  const firstDay = Math.min(...applications.map((application) => application.appliedDay));
  const labelDay = Math.max(...applications.map(labelDayOf));
  const horizonDay = Math.max(
    labelDateOf(firstDay, { months: HORIZON_MONTHS, days: 0 }),
    labelDateOf(labelDay, { months: HORIZON_AFTER_LABEL_MONTHS, days: 0 }),
    plantDay,
  );
  return {
    firstDay,
    labelOffset: labelDay - firstDay,
    plantOffset: plantDay - firstDay,
    horizonOffset: horizonDay - firstDay,
  };
}

/**
 * Odds of harm over the season: from the weather of a station and a resolved question to odds, dates, thirds.
 * Odds are probabilities [0-1], one for each day after spraying; days are numbers since 1970-01-01 or offsets from the first
 * one [d]; sums are breakdown days.
 *
 * @throws {MissingDataError} TOO_FEW_YEARS where the record cannot carry odds
 * @example seasonOdds(climate, season).oddsAtPlanting // 0.2211
 */
export function seasonOdds(climate: StationClimate, question: SeasonQuestion): SeasonOdds {
  const { oddsLimit } = question;
  const { firstDay, labelOffset, plantOffset, horizonOffset } = seasonHorizon(question);

  const { years, judged, observedDays, fallsFrom } = carryoverYears(climate, question, {
    firstDay,
    labelOffset,
    plantOffset,
    horizonOffset,
  });
  const weights = yearWeights(climate, years, plantOffset, firstDay, question.outlook);
  const quick = quickCurve(
    stretchesOf(
      years.map(({ lastOffset }) => lastOffset),
      weights,
      horizonOffset,
    ),
    meanOddsOf((year, offset) => years[year].probabilityAt(offset)),
    fallsFrom,
  );
  const atPlanting = years.map((year) => year.probabilityAt(plantOffset));
  const oddsAtPlanting = quick.at(plantOffset);
  let curve: OddsCurve | undefined;
  return {
    firstDay,
    labelOffset,
    plantOffset,
    horizonOffset,
    demands: judged.map(({ demand }) => demand),
    judged,
    oddsByEvidence: years[0].atPlantingByEvidence.map((_, step) =>
      weightedMean(
        years.map(({ atPlantingByEvidence }) => atPlantingByEvidence[step]),
        weights,
      ),
    ),
    oddsAtPlanting,
    oddsAtLabel: quick.at(labelOffset),
    range: oddsRange(atPlanting, weights, oddsAtPlanting),
    clearOffset: quick.clearOffset(labelOffset, oddsLimit),
    searchEnded: quick.lastOffset >= horizonOffset ? 'horizon' : 'record',
    medianBreakdownDays: median(years.map((year) => year.breakdownDaysAtPlanting)),
    years,
    weights,
    thirds: thirdsOf(years, weights, plantOffset),
    oddsAt: quick.at,
    get curve() {
      curve ??= oddsCurve(years, weights, horizonOffset);
      return curve;
    },
    observedDays,
  };
}
