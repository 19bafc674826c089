import {
  type ConditionedLabel,
  type JudgedClause,
  judgeConditions,
  longerOf,
} from '../analysis/labelConditions.ts';
import { type JudgedLine, passedOver } from '../analysis/passedOver.ts';
import { measureRow, sayInterval } from '../catalogue/intervalLength.ts';
import { labelDateOf } from '../model/calendar/interval.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { Clause } from '../schema/clauses.ts';
import type { LabelCondition } from '../schema/labelCondition.ts';
import { fieldFacts } from './fieldFacts.ts';
import type { LabelLine } from './labelLines.ts';
import { type ResolvedQuestion, resolveQuestion } from './resolveQuestion.ts';
import type { StationWeather } from './stationWeather.ts';
import { waterSeasonOf } from './waterSeasonOf.ts';

/** A question whose interval is the one that the label's conditions leave. */
export interface SettledQuestion {
  readonly resolved: ResolvedQuestion;
  /** The interval before the conditions lengthened it, in words; null where they did not. */
  readonly lengthenedFrom: string | null;
  /** Intervals of the published lines that another line of their label takes the place of, in words. */
  readonly passedOver: readonly string[];
  /** True where water that is waited for is not sure to come within three years. */
  readonly waitsForever: boolean;
  /** True where all conditions for the shorter end of an interval are met. */
  readonly shorterGranted: boolean;
  /** The conditions, line by line of the label. */
  readonly judged: readonly SettledClause[];
}

/** A condition as it stands. */
export interface SettledClause {
  readonly judged: JudgedClause;
  /** False where it moves no date. */
  readonly setsDate: boolean;
}

/**
 * Judges a question's label conditions against its weather, and takes the interval that they leave: of several lines of
 * one label those that fit the field, the longest of them, and the longer one still while a condition is open or has
 * failed. A question without conditions comes back as it is.
 *
 * @throws {InvalidInputError} DATE_OUTSIDE_RECORD
 */
export function settleConditions(
  asked: ResolvedQuestion,
  weather: StationWeather,
  catalogue: Catalogue,
): SettledQuestion {
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
  const clauses = judged.flatMap(({ line, label }, index) =>
    label.judged.map((one) => ({ judged: one, setsDate: line.setsDate && !out.has(index) })),
  );
  const labels = setting.map(({ label }) => label);
  const { resolved: longer, lengthenedFrom } = lengthened(resolved, labels);
  return {
    resolved: clauses.some(clauseForbids) ? { ...longer, labelForbids: true } : longer,
    lengthenedFrom,
    judged: clauses,
    passedOver: lines.filter((_, index) => out.has(index)).map(({ interval }) => sayInterval(interval)),
    waitsForever: labels.some(({ judged: all }) =>
      all.some((one) => one.waitsForever && one.state !== 'met'),
    ),
    shorterGranted: isShorterGranted(clauses),
  };
}

function isShorterGranted(clauses: readonly SettledClause[]): boolean {
  const short = clauses.filter(({ judged, setsDate }) => setsDate && judged.clause.grants === 'short end');
  return short.length > 0 && short.every(({ judged }) => judged.state === 'met');
}

/** A condition of the label itself that has failed and without which the crop may not be sown; a rain that starts the
 * interval only moves its date. */
export const forbids = ({
  setsDate,
  state,
  otherwise,
  kind,
}: Pick<LabelCondition, 'setsDate' | 'state' | 'otherwise' | 'kind'>): boolean =>
  setsDate && state === 'not met' && otherwise === 'not allowed' && kind !== 'startingRain';

const clauseForbids = ({ judged: { clause, state }, setsDate }: SettledClause): boolean =>
  forbids({ setsDate, state, otherwise: otherwiseOf(clause), kind: clause.kind });

/** What holds where a condition fails: another interval, or a word of the label's. */
export const otherwiseOf = ({ ifNot }: Clause): LabelCondition['otherwise'] =>
  typeof ifNot === 'string' ? ifNot : 'interval';

interface LineOfLabel {
  readonly line: LabelLine;
  readonly label: ConditionedLabel;
}

const plain = (resolved: ResolvedQuestion): SettledQuestion => ({
  resolved,
  judged: [],
  lengthenedFrom: null,
  passedOver: [],
  waitsForever: false,
  shorterGranted: false,
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
): Pick<SettledQuestion, 'resolved' | 'lengthenedFrom'> {
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
