import { labelDateOf } from '../model/calendar/interval.ts';
import type { Clause } from '../schema/clauses.ts';
import type { ConditionedInterval, ConditionedLabel, JudgedClause } from './labelConditions.ts';

/** One of several lines that a label, or a row that reports one, has for a crop, and how its conditions stand. */
export interface JudgedLine {
  /** What it was read in; only lines of one source are set against each other. */
  readonly source: string;
  /** False where the source gives it no length: then it takes no other line's place. */
  readonly hasLength: boolean;
  readonly given: ConditionedInterval;
  readonly label: ConditionedLabel;
}

/** Conditions that the field settles, whatever the season brings: they tell the lines of one label apart. */
const SETTLED_BY_FIELD: readonly Clause['kind'][] = [
  'rate',
  'soilPh',
  'organicMatter',
  'soilTexture',
  'annualRain',
];

/**
 * The lines that another line of the same source takes the place of, by their place in the list: those for another rate,
 * soil or rain zone than the field's where one for the field's own is there, and those that only repeat what holds where
 * the conditions of another fail, once those are met. While anything is open, no line is passed over.
 */
export function passedOver(lines: readonly JudgedLine[], appliedDay: number): ReadonlySet<number> {
  const out = lines.flatMap((line, index) =>
    lines.some(
      (other) =>
        other !== line &&
        other.source === line.source &&
        other.hasLength &&
        (isForAnotherField(line, other) || isTheOtherwiseOf(line, other, appliedDay)),
    )
      ? [index]
      : [],
  );
  return new Set(out);
}

const settledOf = ({ label }: JudgedLine): readonly JudgedClause[] =>
  label.judged.filter(({ clause }) => SETTLED_BY_FIELD.includes(clause.kind));

/** Fails a condition of the kind that tells it from the other, whose own are all met. */
function isForAnotherField(line: JudgedLine, other: JudgedLine): boolean {
  const own = settledOf(other);
  return (
    own.every(({ state }) => state === 'met') &&
    settledOf(line).some(
      ({ clause, state }) => state === 'not met' && own.some((met) => met.clause.kind === clause.kind),
    )
  );
}

/** Has the very length that the other's conditions lead to where they fail, and none of them does. */
function isTheOtherwiseOf(line: JudgedLine, other: JudgedLine, appliedDay: number): boolean {
  const dayOf = (interval: ConditionedInterval['interval']) => labelDateOf(appliedDay, interval);
  const length = dayOf(line.given.interval);
  if (length <= dayOf(other.given.interval)) return false;
  const judged = other.label.judged.filter(
    ({ clause }) => clause.kind !== 'bioassay' || clause.role === 'required',
  );
  const leading = judged.filter(({ intervalIfNot }) => intervalIfNot && dayOf(intervalIfNot) === length);
  return (
    leading.length > 0 &&
    judged.every(
      ({ clause, state }) =>
        state === 'met' || (state === 'open' && line.given.clauses.some((own) => isAlike(own, clause))),
    )
  );
}

/** The same condition, wherever it is written. */
function isAlike(one: Clause, other: Clause): boolean {
  return one.kind === 'zone' && other.kind === 'zone' && one.words === other.words;
}
