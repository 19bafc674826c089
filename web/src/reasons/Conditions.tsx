import { keepTogether } from '../answer/oddsInWords.ts';
import type { Answer } from '../api/contract.ts';
import type { Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { CountingRules } from './CountingRules.tsx';
import { countWords } from './conditionWords.ts';
import { MixTable } from './MixTable.tsx';
import { StateMark } from './StateMark.tsx';

/** What the label ties its interval to, how each stands, the interval that results, and counting rules apart. */
export function Conditions({ answer, units }: { answer: Answer; units: Units }) {
  const dates = useDates();
  const { conditions, countingWindows, mix, inputs, labelDate } = answer;
  if (conditions.length + countingWindows.length + mix.length === 0) return null;
  const { interval } = inputs;
  const beside = conditions.length > 0 && conditions.every(({ setsDate }) => !setsDate);
  return (
    <section class="reasons" aria-labelledby="conditions-title" data-testid="conditions">
      <h2 id="conditions-title" class="section-title">
        What the label ties its interval to
      </h2>
      <p class="section-lead" data-testid="interval-result">
        {conditions.length > 0 && `${countWords(conditions)}. `}
        The interval that counts is <b>{keepTogether(interval.text)}</b>, to {dates.full(labelDate)}
        {interval.confirmed ? ', from your own label' : ', not confirmed from a label'}.
        {beside && ' The conditions below belong to the catalogue’s figure and move no date.'}
      </p>
      {conditions.length > 0 && (
        <ul class="condition-list">
          {conditions.map((condition) => (
            <li key={condition.text} data-testid="condition" data-state={condition.state}>
              <StateMark state={condition.state} />
              <p>{keepTogether(condition.text)}</p>
              {condition.source && (
                <small>
                  {condition.mark === 'own label'
                    ? 'Your own label'
                    : `${condition.source} (${condition.mark})`}
                </small>
              )}
            </li>
          ))}
        </ul>
      )}
      <MixTable mix={mix} plantOn={inputs.question.plantOn} />
      <CountingRules rules={countingWindows} units={units} />
    </section>
  );
}
