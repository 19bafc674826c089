import { civilDateOf } from '../calendar.ts';
import { sameDateInYear } from '../model/calendar/interval.ts';
import { type Application, labelDayOf } from './applications.ts';
import { breakdownRecord } from './breakdownRecord.ts';
import { type HistoricalYear, usableYears } from './historicalYears.ts';
import { oddsGiven, plantingOdds } from './plantingOdds.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { StationClimate } from './stationClimate.ts';
import { seasonTraces } from './traces.ts';
import { carryoverYears } from './yearCourses.ts';

/** Equally likely soils that a past year is tried on; each is a yes-or-no outcome. */
export const SOILS_PER_YEAR = 20;

/** What was said before one past year's planting, and what that year's weather then brought. */
export interface HindcastYear {
  readonly year: number;
  /** Probability of harm at planting with the year's own weather, over all soils [0-1]. */
  readonly probability: number;
  /** Soils, of the {@link SOILS_PER_YEAR} equally likely ones, in which residue would have harmed. */
  readonly harmed: number;
  /** Odds at planting, one for each lead, worked out from all other years [0-1]. */
  readonly odds: readonly number[];
}

/** The years that can be looked back on: their own window is usable. */
export function hindcastYears(climate: StationClimate, question: SeasonQuestion): readonly HistoricalYear[] {
  const firstDay = firstDayOf(question.applications);
  const labelOffset = Math.max(...question.applications.map(labelDayOf)) - firstDay;
  const windowDays = Math.max(labelOffset, question.plantDay - firstDay) + 1;
  return usableYears(climate, firstDay, windowDays, question.base);
}

/**
 * One past year treated as the season asked about: the odds some days before planting, from the weather observed by
 * then and every other year's from there on, against the outcome in each of twenty equally likely soils.
 *
 * The year itself is never among its own past years, nor in what the label is taken to ask for. A lead that reaches back
 * before the application gives the plan. What is known only of the question's own season stays out: as-of date, outlook,
 * rest of the season, irrigation, evidence.
 *
 * @param leadDays days before planting on which the odds are given [d]
 * @throws {MissingDataError} TOO_FEW_YEARS where fewer than ten other years are usable
 */
export function hindcastYear(
  climate: StationClimate,
  question: SeasonQuestion,
  year: number,
  leadDays: readonly number[],
): HindcastYear {
  const season = seasonInYear(question, year);
  const { applications, plantDay, layer, assumptions } = season;
  const firstDay = firstDayOf(applications);
  const plantOffset = plantDay - firstDay;
  const labelOffset = Math.max(...applications.map(labelDayOf)) - firstDay;
  const horizonOffset = Math.max(plantOffset, labelOffset);
  const { years, judged } = carryoverYears(climate, season, {
    firstDay,
    labelOffset,
    plantOffset,
    horizonOffset,
  });
  const weights = new Float64Array(years.length).fill(1);
  const known = { judged, years, weights, firstDay, plantOffset };
  const plan = plantingOdds(climate, season, known, 0);
  const odds = leadDays.map((days) => {
    const observedDays = plantOffset - days + 1;
    return observedDays > 0 ? plantingOdds(climate, season, known, observedDays) : plan;
  });
  const itself = { year, start: firstDay - climate.series.firstDay };
  const came = judged.map((one) => {
    const { response } = one.application;
    const record = breakdownRecord(climate, layer, response, assumptions);
    const traces = seasonTraces(climate, record, layer, response, [itself], {
      start: itself.start,
      observedDays: 0,
      restOfSeasonRain: 1,
      irrigation: { firstOffset: 0, amountsMm: new Float64Array() },
      horizonDays: plantOffset,
      meltMmPerDegreeDay: assumptions.meltMmPerDegreeDay,
      basis: assumptions,
    });
    return { ...one, traces };
  });
  const outcome = { judged: came, years: [itself], weights: Float64Array.of(1), firstDay, plantOffset };
  const probability = oddsGiven(outcome, [], assumptions);
  return { year, probability, harmed: harmedSoils(probability), odds };
}

/**
 * How many of the equally likely soils are harmed: soil i stands for the quantile (i − 1/2)/20 of breakdown speed, and
 * a soil is harmed where it is slower than the share p of all soils.
 */
export function harmedSoils(probability: number): number {
  let harmed = 0;
  for (let soil = 0; soil < SOILS_PER_YEAR; soil++) {
    if ((soil + 0.5) / SOILS_PER_YEAR < probability) harmed++;
  }
  return harmed;
}

const firstDayOf = (applications: readonly Application[]): number =>
  Math.min(...applications.map(({ appliedDay }) => appliedDay));

/** The question moved into a past year: same calendar dates, distances between applications kept. */
function seasonInYear(question: SeasonQuestion, year: number): SeasonQuestion {
  const firstDay = firstDayOf(question.applications);
  const shift = sameDateInYear(firstDay, year) - firstDay;
  const plantYear = year + civilDateOf(question.plantDay).year - civilDateOf(firstDay).year;
  return {
    layer: question.layer,
    assumptions: question.assumptions,
    oddsLimit: question.oddsLimit,
    base: question.base,
    restOfSeasonRain: 1,
    plantDay: sameDateInYear(question.plantDay, plantYear),
    applications: question.applications.map(({ notBefore, ...application }) => ({
      ...application,
      appliedDay: application.appliedDay + shift,
      ...(notBefore !== undefined && { notBefore: notBefore + shift }),
    })),
  };
}
