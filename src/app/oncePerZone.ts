import type { JudgedClause } from '../analysis/labelConditions.ts';
import type { Interval } from '../model/calendar/interval.ts';
import type { SettledClause } from './settleConditions.ts';

/** A clause of one line of a label, and what other lines give for the same one. */
export interface TakenClause extends SettledClause {
  /** Intervals that other lines give for the same clause; none of them is its own. */
  readonly alsoIfMet: readonly Interval[];
}

/**
 * The same clauses in the same order, but for a zone that several lines of a label ask for in the same words: it stands
 * once, with the intervals of all its lines, or of those that set the date where any does. Only the user can tell whether
 * the field lies in it, and need not tell it twice.
 */
export function oncePerZone(taken: readonly TakenClause[]): TakenClause[] {
  const groups = new Map<string, TakenClause[]>();
  for (const one of taken) {
    const key = zoneKey(one.judged) ?? `${groups.size} alone`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map(oneOf);
}

/** What a zone is told apart by; null for any other clause, and where the label gives another interval outside of it. */
function zoneKey({ clause, state, intervalIfNot }: JudgedClause): string | null {
  if (clause.kind !== 'zone' || intervalIfNot !== null || clause.grants === 'short end') return null;
  const sources = 'sources' in clause ? clause.sources : [];
  return JSON.stringify([clause.words, clause.ifNot, state, sources]);
}

function oneOf(group: readonly TakenClause[]): TakenClause {
  const setting = group.filter(({ setsDate }) => setsDate);
  const [first, ...rest] = setting.length > 0 ? setting : group;
  const own = first.judged.intervalIfMet;
  const others = new Map(
    rest.map(({ judged: { intervalIfMet: one } }) => [`${one.months} ${one.days}`, one]),
  );
  others.delete(`${own.months} ${own.days}`);
  return { ...first, alsoIfMet: [...others.values()] };
}
