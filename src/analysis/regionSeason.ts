import { civilDateOf, dayNumberOf } from '../calendar.ts';
import { labelDateOf } from '../model/calendar/interval.ts';
import { logLabelMargin } from '../model/odds/labelMargin.ts';
import type { Application } from './applications.ts';
import { usableYears } from './historicalYears.ts';
import { pairHorizon, pairSeason } from './pairSeason.ts';
import { residueCourse } from './residueCourse.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import { type TraceSet, traceSet } from './seasonTraceSet.ts';
import type { StationClimate } from './stationClimate.ts';

/** Odds and dates of one treatment at one station. */
export interface RegionSeason {
  readonly years: number;
  /** Odds at planting with nothing observed [0-1]. */
  readonly oddsNormal: number;
  /** Odds at planting with the weather through the as-of day; null while planning [0-1]. */
  readonly oddsNow: number | null;
  readonly range: { readonly low: number; readonly high: number };
  /** Share of years whose own odds were above the limit on the label date [0-1]. */
  readonly labelTooShortShare: number;
  readonly labelOffset: number;
  /** Days from the application; null where there is no clear date in the search. */
  readonly clearOffset: number | null;
}

/**
 * One single treatment at one station, in a normal year and in the season under way; the same figures as the whole answer.
 * @throws {MissingDataError} TOO_FEW_YEARS
 */
export function regionSeason(climate: StationClimate, question: SeasonQuestion): RegionSeason {
  const [application] = question.applications;
  const horizonDays = pairHorizon(application, question.plantDay);
  const seasonOf = (asOfDay: number | undefined) => {
    const shared = { ...question, asOfDay, appliedDay: application.appliedDay, horizonDays };
    const set = traceSet(climate, shared);
    return { set, pair: pairSeason(set, application, question) };
  };
  const normal = seasonOf(undefined);
  const planned = normal.pair.at(question.plantDay);
  const now = question.asOfDay === undefined ? null : seasonOf(question.asOfDay).pair.at(question.plantDay);
  const told = now ?? planned;
  return {
    years: planned.years,
    oddsNormal: planned.oddsAtPlanting,
    oddsNow: now?.oddsAtPlanting ?? null,
    range: told.range(),
    labelTooShortShare: shareAboveAtLabel(normal.set, application, question, normal.pair.labelOffset),
    labelOffset: normal.pair.labelOffset,
    clearOffset: told.clearOffset(),
  };
}

/** Share of the years whose own odds on the label date are above the limit. [0-1] */
function shareAboveAtLabel(
  set: TraceSet,
  application: Application,
  { plantDay, assumptions, oddsLimit }: SeasonQuestion,
  labelOffset: number,
): number {
  const { response, halfLife, siteFactor, load, canopyFraction, appliedDay, interval } = application;
  const years = set.years(Math.max(labelOffset, plantDay - appliedDay) + 1);
  const demand = set.demand(response, years, labelDateOf(appliedDay, interval) - appliedDay);
  const logMargin = logLabelMargin(demand, halfLife, assumptions.soilSpread, assumptions.labelMargin);
  const treatment = { offsetDays: 0, logMargin, load, canopyFraction, siteHalfLife: halfLife * siteFactor };
  const above = set
    .traces(response, years)
    .filter(
      (trace) =>
        residueCourse([{ trace, ...treatment }], assumptions.soilSpread, assumptions)(labelOffset) >
        oddsLimit,
    );
  return above.length / years.length;
}

/** A sum over a stretch of days against the same stretch of other years. */
export interface AgainstYears {
  readonly firstDay: number;
  readonly lastDay: number;
  readonly mm: number;
  readonly normalMm: number;
  readonly years: number;
}

/**
 * Rain of some days against the mean of the same calendar days in all usable other years; null where the record does
 * not hold those days well enough, or no other year does.
 * @param sums running sum of the rain meant [mm], length days + 1
 */
export function againstYears(
  climate: StationClimate,
  sums: Float64Array,
  firstDay: number,
  lastDay: number,
  base: SeasonQuestion['base'],
): AgainstYears | null {
  const { series, windows } = climate;
  const length = lastDay - firstDay + 1;
  const start = firstDay - series.firstDay;
  if (length < 1 || !windows.usable(start, length)) return null;
  const { year: own } = civilDateOf(firstDay);
  const others = usableYears(climate, firstDay, length, base).filter(({ year }) => year !== own);
  if (others.length === 0) return null;
  const sumFrom = (index: number) => sums[index + length] - sums[index];
  const total = others.reduce((sum, one) => sum + sumFrom(one.start), 0);
  return { firstDay, lastDay, mm: sumFrom(start), normalMm: total / others.length, years: others.length };
}

/** The June to August that an application belongs to: that of its own year, or of the year before until May. */
export function summerOf({ appliedDay }: Application): { readonly from: number; readonly to: number } {
  const { year, month } = civilDateOf(appliedDay);
  const summer = month < 6 ? year - 1 : year;
  return { from: dayNumberOf(summer, 6, 1), to: dayNumberOf(summer, 8, 31) };
}
