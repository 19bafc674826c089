import {
  type ConditionedLabel,
  type FieldFacts,
  type JudgedClause,
  judgeConditions,
  longerOf,
} from '../analysis/labelConditions.ts';
import type { WaterSeason } from '../analysis/waterWindow.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { sayInterval } from '../catalogue/intervalLength.ts';
import { labelDateOf } from '../model/calendar/interval.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { Clause, TracedClause } from '../schema/clauses.ts';
import type { LabelCondition } from '../schema/labelCondition.ts';
import type { Provenance } from '../schema/provenance.ts';
import type { Question } from '../schema/question.ts';
import type { StationWeather } from './climateCache.ts';
import { conditionWords } from './conditionWords.ts';
import type { LabelLine } from './labelLines.ts';
import { meanAnnualRainMm } from './meanAnnualRain.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { observedThrough } from './seasonQuestionOf.ts';

/** A question whose interval is the one that the label's conditions leave, and those conditions. */
export interface ConditionedQuestion {
  readonly resolved: ResolvedQuestion;
  readonly conditions: readonly LabelCondition[];
  /** The interval before the conditions lengthened it, in words; null where they did not. */
  readonly lengthenedFrom: string | null;
  /** True where water that is waited for is not sure to come within three years. */
  readonly waitsForever: boolean;
}

/** Organic matter that stands in where nothing is given. [% by mass] */
const STAND_IN_ORGANIC_MATTER = 2;

/**
 * Judges a question's label conditions against its weather, and takes the interval that they leave: the longer one while
 * a condition is open or has failed. A question without conditions comes back as it is.
 *
 * @throws {InvalidInputError} DATE_OUTSIDE_RECORD
 */
export function withConditions(
  resolved: ResolvedQuestion,
  weather: StationWeather,
  catalogue: Catalogue,
): ConditionedQuestion {
  const { lines, application, interval } = resolved;
  if (lines.length === 0) return { resolved, conditions: [], lengthenedFrom: null, waitsForever: false };
  const season = waterSeasonOf(resolved, weather);
  const facts = factsOf(resolved, weather);
  const labels = lines.map((line) => ({ line, label: judgeConditions(line, season, facts) }));
  const conditions = labels.flatMap(({ line, label }) =>
    label.judged.map((judged) => conditionOf(judged, line, catalogue)),
  );
  const governing = labels.filter(({ line }) => line.setsDate).map(({ label }) => label);
  const { appliedDay } = application;
  const longest = governing.reduce(
    (best, label) => longerOf(best, label.interval, appliedDay),
    application.interval,
  );
  const notBefore = latestWait(governing);
  const labelDay = Math.max(labelDateOf(appliedDay, longest), notBefore ?? Number.NEGATIVE_INFINITY);
  const before = appliedDay + interval.lengthDays;
  const waitsForever = governing.some(({ judged }) =>
    judged.some((one) => one.waitsForever && one.state !== 'met'),
  );
  if (labelDay <= before) return { resolved, conditions, lengthenedFrom: null, waitsForever };
  const change = { interval: longest, ...(notBefore === null ? {} : { notBefore }) };
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
    conditions,
    lengthenedFrom: interval.text,
    waitsForever,
  };
}

function latestWait(labels: readonly ConditionedLabel[]): number | null {
  const waits = labels.flatMap(({ notBefore }) => (notBefore === null ? [] : [notBefore]));
  return waits.length === 0 ? null : Math.max(...waits);
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

function factsOf(resolved: ResolvedQuestion, { climate }: StationWeather): FieldFacts {
  const { question, rateGramsPerHa } = resolved;
  return {
    soilPh: question.soilPh,
    organicMatterPercent:
      question.organicMatterPercent === STAND_IN_ORGANIC_MATTER ? null : question.organicMatterPercent,
    rateGramsPerHa,
    bioassay: latestBioassay(question),
    meanAnnualRainMm: meanAnnualRainMm(climate),
    yearlyIrrigationMm: yearlyIrrigation(question),
    oddsLimit: question.oddsLimit,
  };
}

/** The latest bioassay up to the planting date; of one day's several, an injured one counts. */
function latestBioassay({ evidence, plantOn }: Question): FieldFacts['bioassay'] {
  const told = evidence.flatMap((one) => (one.kind === 'bioassay' && one.on <= plantOn ? [one] : []));
  const latest = told
    .map(({ on }) => on)
    .sort()
    .at(-1);
  if (latest === undefined) return null;
  return told.some(({ on, injured }) => on === latest && injured) ? 'injured' : 'clean';
}

/** Irrigation of the year from the application on. [mm] */
function yearlyIrrigation({ irrigation, appliedOn }: Question): number {
  const yearOn = parseIsoDate(appliedOn) + 365;
  return irrigation
    .filter(({ date }) => date >= appliedOn && parseIsoDate(date) < yearOn)
    .reduce((sum, { mm }) => sum + mm, 0);
}

/** Mark and sources of a clause of the catalogue; null for one of the user's own label. */
const provenanceOf = (clause: Clause | TracedClause): Provenance | null =>
  'mark' in clause && 'sources' in clause ? (clause as TracedClause) : null;

function conditionOf(judged: JudgedClause, line: LabelLine, { sources }: Catalogue): LabelCondition {
  const { clause, state, odds, range, amountMm, requiredMm, byDay, intervalIfMet, intervalIfNot } = judged;
  const traced = provenanceOf(clause);
  const titles = traced?.sources.map((id) => sources.find((source) => source.id === id)?.reference ?? id);
  return {
    kind: clause.kind,
    text: conditionWords(judged),
    state,
    oddsMet: odds,
    range,
    amountMm,
    requiredMm,
    byDate: byDay === null ? null : isoDateOf(byDay),
    intervalIfMet: sayInterval(intervalIfMet),
    intervalIfNot: intervalIfNot && sayInterval(intervalIfNot),
    otherwise: typeof clause.ifNot === 'string' ? clause.ifNot : 'interval',
    setsDate: line.setsDate,
    source: titles?.join('; ') ?? null,
    mark: traced?.mark ?? 'own label',
  };
}
