import { irrigationCourse } from '../model/weather/ownRecords.ts';
import { weightedMean } from '../model/years/weightedMean.ts';
import type { Assumptions } from '../schema/assumptions.ts';
import { breakdownRecord } from './breakdownRecord.ts';
import { type EvidenceMemory, type Finding, updatings } from './evidence.ts';
import type { HistoricalYear } from './historicalYears.ts';
import { residueCourse } from './residueCourse.ts';
import type { SeasonOdds } from './seasonOdds.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { StationClimate } from './stationClimate.ts';
import { seasonTraces } from './traces.ts';
import { sampledGroups, treatmentGroups } from './yearCourses.ts';

/** What the odds at planting hang on beside the weather known by then. */
export type JudgedSeason = Pick<SeasonOdds, 'judged' | 'weights' | 'firstDay' | 'plantOffset'> & {
  readonly years: readonly HistoricalYear[];
};

/**
 * Odds at planting with what was known after a number of days: the same years, demands and weights, weather observed
 * up to then, findings dated up to then. [0-1]
 *
 * @param observedDays days from the first application observed by then; 0 gives the plan
 */
export function plantingOdds(
  climate: StationClimate,
  question: SeasonQuestion,
  { judged, years, weights, firstDay, plantOffset }: JudgedSeason,
  observedDays: number,
): number {
  const { assumptions, layer } = question;
  const findings = (question.evidence ?? [])
    .filter(({ day }) => day - firstDay <= observedDays && observedDays > 0)
    .toSorted((a, b) => a.day - b.day);
  const asKnown = judged.map((one) => {
    const { response } = one.application;
    const record = breakdownRecord(climate, layer, response, assumptions);
    const traces = seasonTraces(climate, record, layer, response, years, {
      start: firstDay - climate.series.firstDay,
      observedDays,
      restOfSeasonRain: question.restOfSeasonRain,
      irrigation: irrigationCourse(question.irrigation ?? [], firstDay, plantOffset),
      horizonDays: plantOffset,
      meltMmPerDegreeDay: assumptions.meltMmPerDegreeDay,
      basis: assumptions,
    });
    return { ...one, traces };
  });
  return oddsGiven({ judged: asKnown, years, weights, firstDay, plantOffset }, findings, assumptions);
}

/** Odds at planting along given traces once some findings, in order of date, are in. [0-1] */
export function oddsGiven(
  { judged, years, weights, firstDay, plantOffset }: JudgedSeason,
  findings: readonly Finding[],
  assumptions: Assumptions,
): number {
  const memory: EvidenceMemory = new Map();
  const probabilities = years.map((_, year) => {
    const groups = treatmentGroups(judged, year, firstDay);
    const worst = Math.max(
      ...groups.map((group) => residueCourse(group, assumptions.soilSpread, assumptions)(plantOffset)),
    );
    if (findings.length === 0) return worst;
    const sampled = sampledGroups(judged, year, firstDay);
    return updatings(sampled, findings, firstDay, assumptions, memory)[findings.length - 1](worst);
  });
  return weightedMean(probabilities, weights);
}
