import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { InvalidInputError } from '../errors.ts';
import type { DailySeries } from '../schema/weather.ts';
import { carryingApplications, firstAppliedDay } from './fieldTreatments.ts';
import { findingsOf } from './findings.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { weatherOfOtherDays } from './weatherOfOtherDays.ts';

/**
 * A resolved question as the analysis asks it.
 * @throws {InvalidInputError} DATE_OUTSIDE_RECORD, EVIDENCE_RATE
 */
export function seasonQuestionOf(resolved: ResolvedQuestion, series: DailySeries): SeasonQuestion {
  const { question } = resolved;
  return {
    layer: resolved.layer,
    applications: carryingApplications(resolved),
    plantDay: resolved.plantDay,
    oddsLimit: question.oddsLimit,
    asOfDay: observedThrough(question.asOf, firstAppliedDay(resolved), series),
    ...weatherOfOtherDays(question),
    evidence: findingsOf(resolved),
    assumptions: question.assume,
  };
}

/**
 * The last observed day that counts; undefined while planning.
 * @throws {InvalidInputError} DATE_OUTSIDE_RECORD
 */
export function observedThrough(
  asOf: string | undefined,
  appliedDay: number,
  series: DailySeries,
): number | undefined {
  if (asOf === undefined) return undefined;
  const asOfDay = parseIsoDate(asOf);
  const lastDay = series.firstDay + series.days - 1;
  if (asOfDay > lastDay || asOfDay < series.firstDay) {
    throw new InvalidInputError(
      'DATE_OUTSIDE_RECORD',
      `The record of ${series.station.id} runs from ${isoDateOf(series.firstDay)} to ${isoDateOf(lastDay)}; nothing is observed on ${asOf}.`,
      {
        hint: `Give an as-of date up to ${isoDateOf(lastDay)}, leave it out to plan from past years alone, or import newer records.`,
        details: { field: 'asOf', firstDate: isoDateOf(series.firstDay), lastDate: isoDateOf(lastDay) },
      },
    );
  }
  return asOfDay < appliedDay ? undefined : asOfDay;
}
