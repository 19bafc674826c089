import {
  type ConditionedLabel,
  type JudgedClause,
  judgeConditions,
  longerOf,
} from '../analysis/labelConditions.ts';
import { type JudgedLine, passedOver } from '../analysis/passedOver.ts';
import type { WaterSeason } from '../analysis/waterWindow.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { measureRow, sayInterval } from '../catalogue/intervalLength.ts';
import { titleOf } from '../catalogue/titleOf.ts';
import { labelDateOf } from '../model/calendar/interval.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { Clause, TracedClause } from '../schema/clauses.ts';
import type { LabelCondition } from '../schema/labelCondition.ts';
import type { Provenance } from '../schema/provenance.ts';

import { conditionName, conditionWords } from './conditionWords.ts';
import { fieldFacts } from './fieldFacts.ts';
import type { LabelLine } from './labelLines.ts';
import { type ResolvedQuestion, resolveQuestion } from './resolveQuestion.ts';
import type { Say } from './say.ts';
import { observedThrough } from './seasonQuestionOf.ts';
import type { StationWeather } from './stationWeather.ts';

/** A question whose interval is the one that the label's conditions leave, and those conditions. */
export interface ConditionedQuestion {
  readonly resolved: ResolvedQuestion;
  readonly conditions: readonly LabelCondition[];
  /** The interval before the conditions lengthened it, in words; null where they did not. */
  readonly lengthenedFrom: string | null;
  /** Intervals of the published lines that another line of their label takes the place of, in words. */
  readonly passedOver: readonly string[];
  /** True where water that is waited for is not sure to come within three years. */
  readonly waitsForever: boolean;
}

/**
 * Judges a question's label conditions against its weather, and takes the interval that they leave: of several lines of
 * one label those that fit the field, the longest of them, and the longer one still while a condition is open or has
 * failed. A question without conditions comes back as it is.
 *
 * @throws {InvalidInputError} DATE_OUTSIDE_RECORD
 */
export function withConditions(
  asked: ResolvedQuestion,
  weather: StationWeather,
  catalogue: Catalogue,
  say: Say,
): ConditionedQuestion {
  const { lines } = asked;
  if (lines.length === 0) return plain(asked);
  const season = waterSeasonOf(asked, weather);
  const facts = fieldFacts(asked, weather);
  const judged = lines.map((line): LineOfLabel => ({ line, label: judgeConditions(line, season, facts) }));
  const out = passedOver(judged.map(judgedLine), asked.application.appliedDay);
  const setting = judged.filter(({ line }, index) => line.setsDate && !out.has(index));
  const resolved =
    out.size === 0
      ? asked
      : resolveQuestion(asked.question, catalogue, new Set([...out].map((index) => rowIdOf(lines[index]))));
  const conditions = judged.flatMap(({ line, label }, index) =>
    label.judged.map((one) => conditionOf(one, line.setsDate && !out.has(index), catalogue, say)),
  );
  const labels = setting.map(({ label }) => label);
  const { resolved: longer, lengthenedFrom } = lengthened(resolved, labels);
  return {
    resolved: conditions.some(forbids) ? { ...longer, labelForbids: true } : longer,
    lengthenedFrom,
    conditions,
    passedOver: lines.filter((_, index) => out.has(index)).map(({ interval }) => sayInterval(interval)),
    waitsForever: labels.some(({ judged: all }) =>
      all.some((one) => one.waitsForever && one.state !== 'met'),
    ),
  };
}

/** A condition of the label itself that has failed and without which the crop may not be sown; a rain that starts the
 * interval only moves its date. */
export const forbids = ({ setsDate, state, otherwise, kind }: LabelCondition): boolean =>
  setsDate && state === 'not met' && otherwise === 'not allowed' && kind !== 'startingRain';

interface LineOfLabel {
  readonly line: LabelLine;
  readonly label: ConditionedLabel;
}

const plain = (resolved: ResolvedQuestion): ConditionedQuestion => ({
  resolved,
  conditions: [],
  lengthenedFrom: null,
  passedOver: [],
  waitsForever: false,
});

/** Lines that set no date take nobody's place: each counts as a source of its own. */
const judgedLine = ({ line, label }: LineOfLabel, index: number): JudgedLine => ({
  source: line.row !== null && line.setsDate ? line.row.source : `line ${index}`,
  hasLength: line.row === null || measureRow(line.row) !== null,
  given: line,
  label,
});

function rowIdOf({ row }: LabelLine): number {
  if (row === null) throw new Error('only rows of the catalogue take each other’s place');
  return row.rowId;
}

/** The question with the longest interval and wait that the labels ask for; never one that ends earlier. */
function lengthened(
  resolved: ResolvedQuestion,
  labels: readonly ConditionedLabel[],
): Pick<ConditionedQuestion, 'resolved' | 'lengthenedFrom'> {
  const { application, interval } = resolved;
  const { appliedDay } = application;
  const longest = labels.reduce(
    (best, label) => longerOf(best, label.interval, appliedDay),
    application.interval,
  );
  const waits = labels.flatMap(({ notBefore }) => (notBefore === null ? [] : [notBefore]));
  const notBefore = Math.max(application.notBefore ?? Number.NEGATIVE_INFINITY, ...waits);
  const labelDay = Math.max(labelDateOf(appliedDay, longest), notBefore);
  if (labelDay <= appliedDay + interval.lengthDays) return { resolved, lengthenedFrom: null };
  const change = { interval: longest, ...(Number.isFinite(notBefore) ? { notBefore } : {}) };
  return {
    resolved: {
      ...resolved,
      interval: {
        ...interval,
        text: sayInterval(longest),
        months: longest.months,
        days: longest.days,
        lengthDays: labelDay - appliedDay,
      },
      application: { ...application, ...change },
      otherApplications: resolved.otherApplications.map((other) => ({ ...other, ...change })),
    },
    lengthenedFrom: interval.text,
  };
}

/** The season that a question's sums of water are taken from. */
export function waterSeasonOf(
  { question, application, plantDay }: ResolvedQuestion,
  { climate }: StationWeather,
): WaterSeason {
  const { outlook } = question;
  const dayOrNone = (date: string | undefined) => (date === undefined ? undefined : parseIsoDate(date));
  return {
    climate,
    firstDay: application.appliedDay,
    asOfDay: observedThrough(question.asOf, application.appliedDay, climate.series),
    restOfSeasonRain: question.restOfSeasonRain,
    irrigation: question.irrigation.map(({ date, mm }) => ({ day: parseIsoDate(date), mm })),
    base: { from: question.baseFrom, to: question.baseTo },
    outlook: outlook && {
      below: outlook.belowPercent / 100,
      near: outlook.nearPercent / 100,
      above: outlook.abovePercent / 100,
      fromDay: dayOrNone(outlook.from),
      toDay: dayOrNone(outlook.to),
    },
    plantDay,
  };
}

/** Mark and sources of a clause of the catalogue; null for one of the user's own label. */
const provenanceOf = (clause: Clause | TracedClause): Provenance | null =>
  'mark' in clause && 'sources' in clause ? (clause as TracedClause) : null;

function conditionOf(
  judged: JudgedClause,
  setsDate: boolean,
  { sources }: Catalogue,
  say: Say,
): LabelCondition {
  const { clause, state, odds, range, amountMm, requiredMm, byDay, intervalIfMet, intervalIfNot } = judged;
  const traced = provenanceOf(clause);
  const titles = traced?.sources.map((id) => titleOf(id, sources));
  return {
    kind: clause.kind,
    name: conditionName(judged),
    text: conditionWords(judged, say),
    state,
    oddsMet: odds,
    range,
    amountMm,
    requiredMm,
    byDate: byDay === null ? null : isoDateOf(byDay),
    intervalIfMet: sayInterval(intervalIfMet),
    intervalIfNot: intervalIfNot && sayInterval(intervalIfNot),
    otherwise: typeof clause.ifNot === 'string' ? clause.ifNot : 'interval',
    setsDate,
    source: titles?.join('; ') ?? null,
    mark: traced?.mark ?? 'own label',
  };
}
