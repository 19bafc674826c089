import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { InvalidInputError } from '../errors.ts';
import type { DailySeries } from '../schema/weather.ts';
import { carryingApplications, firstAppliedDay } from './fieldTreatments.ts';
import { findingsOf } from './findings.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';

/**
 * A resolved question as the analysis asks it.
 * @throws {InvalidInputError} DATE_OUTSIDE_RECORD, EVIDENCE_RATE
 */
export function seasonQuestionOf(resolved: ResolvedQuestion, series: DailySeries): SeasonQuestion {
  const { question } = resolved;
  const { outlook } = question;
  const dayOrNone = (date: string | undefined) => (date === undefined ? undefined : parseIsoDate(date));
  return {
    layer: resolved.layer,
    applications: carryingApplications(resolved),
    plantDay: resolved.plantDay,
    oddsLimit: question.oddsLimit,
    base: { from: question.baseFrom, to: question.baseTo },
    asOfDay: observedThrough(question.asOf, firstAppliedDay(resolved), series),
    outlook: outlook && {
      below: outlook.belowPercent / 100,
      near: outlook.nearPercent / 100,
      above: outlook.abovePercent / 100,
      fromDay: dayOrNone(outlook.from),
      toDay: dayOrNone(outlook.to),
    },
    restOfSeasonRain: question.restOfSeasonRain,
    irrigation: question.irrigation.map(({ date, mm }) => ({ day: parseIsoDate(date), mm })),
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
