import { sayOdds } from '../answer/oddsInWords.ts';
import type { Answer } from '../api/contract.ts';
import type { DateWords } from '../units/dates.ts';
import { rainText, type Units } from '../units/units.ts';

type Condition = Answer['conditions'][number];
type Rule = Answer['countingWindows'][number];

/** "1 met, 2 open". */
export function countWords(conditions: readonly Condition[]): string {
  const counts = (['met', 'not met', 'open'] as const)
    .map((state) => ({ state, count: conditions.filter((condition) => condition.state === state).length }))
    .filter(({ count }) => count > 0);
  const all = conditions.length === 1 ? 'One condition' : `${conditions.length} conditions`;
  return `${all}: ${counts.map(({ state, count }) => `${count} ${state}`).join(', ')}`;
}

/** How the field stands against a rule’s sum, in words; empty for rules without one. */
export function sumWords(rule: Rule, units: Units, dates: DateWords): string {
  const { from, to, thresholdMm, sumMm, through, state, oddsUnder } = rule;
  if (thresholdMm === null || from === null || to === null) return '';
  const window = `${dates.monthDay(from)} to ${dates.monthDay(to)}`;
  const asked = rainText(thresholdMm, units);
  if (sumMm === null || through === null) {
    const odds = oddsUnder === null ? '' : ` Odds of staying under: ${sayOdds(oddsUnder)}.`;
    return `${window}: nothing observed yet, against ${asked}.${odds}`;
  }
  const soFar = through < to ? ` by ${dates.monthDay(through)}` : '';
  const open = state === 'open' && oddsUnder !== null ? ` Odds of staying under: ${sayOdds(oddsUnder)}.` : '';
  const stands = state === 'open' ? 'still open' : state;
  return `${window}: ${rainText(sumMm, units)}${soFar}, against ${asked}, ${stands}.${open}`;
}
