import { keepTogether, sayOdds } from '../answer/oddsInWords.ts';
import type { Answer } from '../api/contract.ts';
import { sayMonthDay } from '../question/calendar.ts';
import { rainText, type Units } from '../units/units.ts';

type Rule = Answer['countingWindows'][number];

/** Published counting rules: advice from a region, which sets no date. */
export function CountingRules({ rules, units }: { rules: readonly Rule[]; units: Units }) {
  if (rules.length === 0) return null;
  return (
    <div class="counting" data-testid="counting-rules">
      <h3>Counting rules from the country, as advice only</h3>
      <p>They set no date here. Each was written for its own region.</p>
      <ul class="rule-list">
        {rules.map((rule) => (
          <li key={rule.id}>
            <b>{rule.region}</b>: {rule.advice}.{' '}
            {sumWords(rule, units) && <span class="rule-sum">{keepTogether(sumWords(rule, units))} </span>}
            <small>
              {rule.source} ({rule.mark})
            </small>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** How the field stands against a rule’s sum, in words; empty for rules without one. */
export function sumWords(rule: Rule, units: Units): string {
  const { from, to, thresholdMm, sumMm, through, state, oddsUnder } = rule;
  if (thresholdMm === null || from === null || to === null) return '';
  const window = `${sayMonthDay(from)} to ${sayMonthDay(to)}`;
  const asked = rainText(thresholdMm, units);
  if (sumMm === null || through === null) {
    const odds = oddsUnder === null ? '' : ` Odds of staying under: ${sayOdds(oddsUnder)}.`;
    return `${window}: nothing observed yet, against ${asked}.${odds}`;
  }
  const soFar = through < to ? ` by ${sayMonthDay(through)}` : '';
  const open = state === 'open' && oddsUnder !== null ? ` Odds of staying under: ${sayOdds(oddsUnder)}.` : '';
  const stands = state === 'open' ? 'still open' : state;
  return `${window}: ${rainText(sumMm, units)}${soFar}, against ${asked}, ${stands}.${open}`;
}
