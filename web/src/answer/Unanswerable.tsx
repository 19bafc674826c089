import type { Problem } from '../api/contract.ts';

/** Refusals that are themselves the answer: the record cannot carry odds, so none are shown. */
export const isUnanswerable = (problem: Problem | null): problem is Problem =>
  problem !== null && problem.code === 'TOO_FEW_YEARS';

/** In place of an answer: why there is none, and what to do. */
export function Unanswerable({ problem }: { problem: Problem }) {
  return (
    <article class="answer">
      <h1 class="sentence" data-testid="sentence">
        {problem.message}
      </h1>
      <p class="advice" data-testid="advice">
        {problem.hint}
      </p>
    </article>
  );
}
