import { keepTogether } from '../answer/oddsInWords.ts';
import type { Answer } from '../api/contract.ts';
import type { Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { sumWords } from './conditionWords.ts';

type Rule = Answer['countingWindows'][number];

/** Published counting rules: advice from a region, which sets no date. */
export function CountingRules({ rules, units }: { rules: readonly Rule[]; units: Units }) {
  const dates = useDates();
  if (rules.length === 0) return null;
  return (
    <div class="counting" data-testid="counting-rules">
      <h3>Counting rules from the country, as advice only</h3>
      <p>They set no date here. Each was written for its own region.</p>
      <ul class="rule-list">
        {rules.map((rule) => (
          <li key={rule.id}>
            <b>{rule.region}</b>: {rule.advice}.{' '}
            {sumWords(rule, units, dates) && (
              <span class="rule-sum">{keepTogether(sumWords(rule, units, dates))} </span>
            )}
            <small>
              {rule.source} ({rule.mark})
            </small>
          </li>
        ))}
      </ul>
    </div>
  );
}
