import { useRef } from 'preact/hooks';
import { rangeWords } from '../../../src/chart/saidWords.ts';
import { OddsChip } from '../answer/OddsChip.tsx';
import { keepTogether } from '../answer/oddsInWords.ts';
import type { FieldAnswer, FieldRecord, QuestionInput } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import type { Kept } from '../keep/shelf.ts';
import { encodeAddress } from '../question/address.ts';
import type { Units } from '../units/units.ts';
import { asking, useDates, useWording } from '../units/useDates.ts';
import { useWorded } from '../units/useWorded.ts';
import { sheetAddress } from './fieldsAddress.ts';
import { ShortCaution } from './ShortCaution.tsx';

interface PlanAnswersProps {
  readonly id: string;
  readonly kept: Kept<FieldRecord>;
  readonly units: Units;
}

/** The answer for each planned crop, with a link to the whole question. */
export function PlanAnswers({ id, kept, units }: PlanAnswersProps) {
  const { plans } = kept.record;
  const wording = useWording();
  // The version in the address asks anew after every change; the server takes no notice of it.
  const { data, problem, gone } = useFetched<FieldAnswer[]>(
    plans.length === 0
      ? null
      : `${asking(`/api/fields/${encodeURIComponent(id)}/answers`, wording)}#${kept.version}`,
  );
  const last = useRef(data);
  if (data !== null) last.current = data;
  const { full } = useDates();
  const worded = useWorded();
  if (plans.length === 0) return null;
  return (
    <section class="plan-answers" aria-label="Answers" data-stale={data === null ? '' : undefined}>
      {problem && <p class="blank-problem">{worded(problem).message}</p>}
      {gone && (
        <p class="blank-problem" data-testid="no-answers">
          No answers come: the program behind this page is asked again every few seconds.
        </p>
      )}
      {plans.map((plan) => {
        const answer = last.current?.find(({ planId }) => planId === plan.id);
        return (
          <article key={plan.id} class="plan-answer" data-testid="plan-answer">
            <h2>
              {plan.crop}
              <small>planting {full(plan.plantOn)}</small>
            </h2>
            {answer === undefined ? (
              <p class="faint">{problem || gone ? 'Not answered.' : 'Asking…'}</p>
            ) : (
              <OneAnswer id={id} answer={answer} units={units} />
            )}
          </article>
        );
      })}
      <ShortCaution />
    </section>
  );
}

function OneAnswer({ id, answer, units }: { id: string; answer: FieldAnswer; units: Units }) {
  const { sentence, oddsAtPlanting, oddsRange, question } = answer;
  const worded = useWorded();
  const problem = answer.problem && worded(answer.problem);
  const href = question === null ? null : `/${encodeAddress(question as QuestionInput, units)}`;
  return (
    <>
      {sentence !== null && (
        <p class="plan-sentence">
          {oddsAtPlanting !== null && <OddsChip odds={oddsAtPlanting} />} {keepTogether(sentence)}
        </p>
      )}
      {oddsRange && (
        <p class="small" data-testid="plan-range">
          {oddsRange.years} years of weather put the odds {keepTogether(rangeWords(oddsRange))}.
        </p>
      )}
      {problem && (
        <p>
          {problem.message} {problem.hint}
        </p>
      )}
      {href && (
        <p>
          <a href={href} data-testid="whole-question">
            The whole question, with years and reasons
          </a>
          {'; '}
          <a href={sheetAddress(id, answer.planId)} data-testid="field-sheet">
            the sheet for the grower, to print
          </a>
        </p>
      )}
    </>
  );
}
