import type { Problem } from '../api/contract.ts';
import { useWorded } from '../units/useWorded.ts';

/** Why there is no answer to the present question, and what to do. */
export function ProblemNote({ problem }: { problem: Problem }) {
  const { message, hint } = useWorded()(problem);
  return (
    <div class="note" data-testid="problem">
      <p class="note-title">{message}</p>
      {hint && <p>{hint}</p>}
    </div>
  );
}

/** The server does not answer. */
export function GoneNote({ retry }: { retry?: () => void }) {
  return (
    <div class="note" data-testid="server-gone">
      <p class="note-title">The program behind this page does not answer.</p>
      <p>
        What you typed is kept here and in the address. It is asked again every few seconds; see whether it
        still runs.
      </p>
      {retry && (
        <button type="button" class="small-button" onClick={retry}>
          Ask again now
        </button>
      )}
    </div>
  );
}
