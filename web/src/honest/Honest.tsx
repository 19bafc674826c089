import type { ComponentType } from 'preact';
import { useState } from 'preact/hooks';
import type { Answer } from '../api/contract.ts';

interface PartProps {
  readonly answer: Answer;
}

/** Whether the odds were honest in past years; code and figures are fetched when they are asked for. */
export function Honest({ answer }: PartProps) {
  const [part, setPart] = useState<{ readonly Part: ComponentType<PartProps> } | null>(null);
  const [failed, setFailed] = useState(false);
  const fetchPart = () =>
    import('./LookBack.tsx').then(
      ({ LookBack }) => setPart({ Part: LookBack }),
      () => setFailed(true),
    );
  return (
    <section class="reasons honest" aria-labelledby="honest-title" data-testid="honest">
      <h2 id="honest-title" class="section-title">
        Are the odds honest?
      </h2>
      <p class="section-lead">
        Each past year of this record can be left out in turn, the odds given as they would have stood before
        its planting, and held against what its own weather then did.
      </p>
      {part === null ? (
        <button type="button" class="button" data-testid="look-back" onClick={fetchPart}>
          Look back on past years
        </button>
      ) : (
        <part.Part answer={answer} />
      )}
      {failed && part === null && (
        <p class="note" data-testid="look-back-failed">
          This part of the page could not be fetched. See whether the program still runs, then press again.
        </p>
      )}
    </section>
  );
}
