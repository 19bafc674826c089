import { type Interval, labelDateOf } from '../model/calendar/interval.ts';
import type { Clause } from '../schema/clauses.ts';
import type { TextureGroup } from '../schema/soil.ts';
import { intervalFromMonths } from '../units.ts';
import { stateOf } from './conditionState.ts';
import { startingRain, stormGuard, waterClause } from './waterClauses.ts';
import type { WaterJudgement, WaterSeason } from './waterWindow.ts';

/** An interval as a label, or a row that reports one, ties it to conditions. */
export interface ConditionedInterval {
  /** What it gives where nothing shortens it: the longer end. */
  readonly interval: Interval;
  /** The shorter end, which some conditions give. */
  readonly shortest: Interval;
  readonly clauses: readonly Clause[];
}

/** What is known of the field beside its weather. */
export interface FieldFacts {
  readonly soilPh?: number;
  /** Organic matter [% by mass]; null where none was given. */
  readonly organicMatterPercent: number | null;
  /** Texture; null where none was given. */
  readonly textureGroup: TextureGroup | null;
  /** Rate of active ingredient [g/ha]; null where it is not known. */
  readonly rateGramsPerHa: number | null;
  /** Outcome of the latest field bioassay; null where there was none. */
  readonly bioassay: 'clean' | 'injured' | null;
  /** Mean rain of a year at the place [mm]; null where no year of the record is whole enough. */
  readonly meanAnnualRainMm: number | null;
  /** Irrigation of a year in the field [mm]. */
  readonly yearlyIrrigationMm: number;
  /** Odds that the user accepts [0-1]; water to come is waited for until it is that sure. */
  readonly oddsLimit: number;
}

/** A clause against weather and field. */
export interface JudgedClause extends WaterJudgement {
  readonly clause: Clause;
  /** What the field has of what the clause bounds: pH, organic matter [%] or rate [g/ha]; null where it is none of these or not given. */
  readonly fieldValue: number | null;
  readonly requiredMm: number | null;
  /** Last day that counts [day number]; null for conditions without a date. */
  readonly byDay: number | null;
  readonly intervalIfMet: Interval;
  /** Null where the label gives no other interval. */
  readonly intervalIfNot: Interval | null;
  /** Day from which water that is waited for may be counted on: the start of the interval after a starting rain, else the
   * first day for planting; the end of the search where it never is; null where nothing is waited for. */
  readonly waitsUntilDay: number | null;
  /** True where the wait has no end within the search. */
  readonly waitsForever: boolean;
  /** True where the last day that counts is a date of the calendar that comes no earlier than planting. */
  readonly endsAfterPlanting: boolean;
}

/** What one interval comes to under its conditions. */
export interface ConditionedLabel {
  readonly interval: Interval;
  /** Earliest label date by water waited for [day number]; null where nothing is waited for. */
  readonly notBefore: number | null;
  readonly labelDay: number;
  readonly judged: readonly JudgedClause[];
}

/**
 * Judges the conditions of one interval and says which length they leave it, on the safe side: while a condition is open
 * or has failed, the longer of the interval and the one that holds otherwise counts; water that starts the interval, or
 * that the crop must wait for, is taken to come on the day by which all but the accepted share of the years have it. A
 * shorter end is shown, and never taken.
 *
 * A clean field bioassay that may stand in for the other conditions settles them.
 */
export function judgeConditions(
  given: ConditionedInterval,
  season: WaterSeason,
  facts: FieldFacts,
): ConditionedLabel {
  const appliedDay = season.firstDay;
  const judged = given.clauses.map((clause) => judgeClause(clause, given, season, facts));
  const waived =
    facts.bioassay === 'clean' &&
    given.clauses.some((clause) => clause.kind === 'bioassay' && clause.role === 'alternative');
  const counting = waived ? [] : judged.filter(({ clause }) => !isStandIn(clause));
  const interval = counting
    .flatMap(({ state, intervalIfNot }) => (state === 'met' || intervalIfNot === null ? [] : [intervalIfNot]))
    .reduce((longest, next) => longerOf(longest, next, appliedDay), given.interval);
  const waits = counting.flatMap(({ waitsUntilDay }) => (waitsUntilDay === null ? [] : [waitsUntilDay]));
  const starts = counting
    .filter(({ clause }) => clause.kind === 'startingRain')
    .flatMap(({ waitsUntilDay }) => (waitsUntilDay === null ? [] : [labelDateOf(waitsUntilDay, interval)]));
  const other = waits.length > 0 ? Math.max(...waits) : null;
  const started = starts.length > 0 ? Math.max(...starts) : null;
  const notBefore = other === null && started === null ? null : Math.max(other ?? 0, started ?? 0);
  return {
    interval,
    notBefore,
    labelDay: Math.max(labelDateOf(appliedDay, interval), notBefore ?? Number.NEGATIVE_INFINITY),
    judged,
  };
}

const isStandIn = (clause: Clause): boolean => clause.kind === 'bioassay' && clause.role === 'alternative';

/** The interval that ends later; the first of equals. */
export const longerOf = (one: Interval, other: Interval, appliedDay: number): Interval =>
  labelDateOf(appliedDay, other) > labelDateOf(appliedDay, one) ? other : one;

function judgeClause(
  clause: Clause,
  { interval, shortest }: ConditionedInterval,
  season: WaterSeason,
  facts: FieldFacts,
): JudgedClause {
  const granted = clause.grants === 'short end' ? shortest : interval;
  const base = {
    clause,
    amountMm: null,
    odds: null,
    range: null,
    requiredMm: null,
    byDay: null,
    intervalIfMet: granted,
    intervalIfNot: otherInterval(clause),
    waitsUntilDay: null,
    waitsForever: false,
    fieldValue: null,
    endsAfterPlanting: false,
  };
  const byFact = (holds: boolean | null) => ({ ...base, state: stateOf(holds) });
  const byValue = (value: number | null | undefined, holds: (value: number) => boolean) => ({
    ...byFact(value == null ? null : holds(value)),
    fieldValue: value ?? null,
  });
  switch (clause.kind) {
    case 'water':
      return { ...base, ...waterClause(clause, granted, season, facts.oddsLimit) };
    case 'startingRain':
      return { ...base, ...startingRain(clause.minMm, granted, season, facts.oddsLimit) };
    case 'stormGuard':
      return { ...base, ...stormGuard(clause, season) };
    case 'annualRain': {
      const { meanAnnualRainMm } = facts;
      const given = clause.counts === 'rain' ? 0 : facts.yearlyIrrigationMm;
      const amountMm = meanAnnualRainMm === null ? null : meanAnnualRainMm + given;
      return {
        ...byFact(amountMm === null ? null : amountMm >= clause.minMm),
        amountMm,
        requiredMm: clause.minMm,
      };
    }
    case 'soilPh':
      return byValue(facts.soilPh, (ph) => isWithin(ph, clause.atLeast, clause.below));
    case 'organicMatter':
      return byValue(facts.organicMatterPercent, (percent) => percent >= clause.minPercent);
    case 'soilTexture':
      return byFact(facts.textureGroup === null ? null : clause.groups.includes(facts.textureGroup));
    case 'rate': {
      const { fromGramsPerHa: from = 0, toGramsPerHa: to = Number.POSITIVE_INFINITY } = clause;
      return byValue(facts.rateGramsPerHa, (rate) => rate >= from && rate <= to);
    }
    case 'bioassay':
      return byFact(facts.bioassay === null ? null : facts.bioassay === 'clean');
    case 'tillage':
    case 'zone':
      return byFact(null);
  }
}

const isWithin = (value: number, atLeast = Number.NEGATIVE_INFINITY, below = Number.POSITIVE_INFINITY) =>
  value >= atLeast && value < below;

function otherInterval({ ifNot }: Clause): Interval | null {
  if (typeof ifNot === 'string') return null;
  return 'days' in ifNot ? { months: 0, days: ifNot.days } : intervalFromMonths(ifNot.months);
}
