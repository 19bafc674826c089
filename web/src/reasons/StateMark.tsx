import type { Answer } from '../api/contract.ts';

type State = Answer['conditions'][number]['state'];

/** The sign of a condition’s state: met a tick in a box, not met a bar in a box, open an empty dashed box. */
export function StateMark({ state }: { state: State }) {
  return (
    <span class="state" data-state={state}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <rect x="1" y="1" width="14" height="14" class="state-box" />
        {state === 'met' && <path d="M4 8.500 7 11.500 12 5" />}
        {state === 'not met' && <path d="M4 8h8" />}
      </svg>
      {state}
    </span>
  );
}
