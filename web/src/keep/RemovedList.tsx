import { useState } from 'preact/hooks';
import type { Removed } from '../api/contract.ts';
import { RefusedError } from '../api/requestJson.ts';
import { type ShelfPath, undoRecord } from './shelf.ts';

interface RemovedListProps {
  readonly shelf: ShelfPath;
  readonly removed: readonly Removed[];
  readonly back: () => void;
}

/** What was removed, each with the way back. */
export function RemovedList({ shelf, removed, back }: RemovedListProps) {
  const [problem, setProblem] = useState<string | null>(null);
  async function bringBack({ id, version }: Removed): Promise<void> {
    try {
      await undoRecord(shelf, id, version);
      setProblem(null);
    } catch (error) {
      setProblem(
        error instanceof RefusedError ? error.message : 'The program behind this page does not answer.',
      );
    }
    back();
  }
  return (
    <>
      <ul class="removed">
        {removed.map((one) => (
          <li key={one.id}>
            <span>{one.name}</span>
            <button
              type="button"
              class="small-button"
              data-testid="bring-back"
              aria-label={`Bring ${one.name} back`}
              onClick={() => void bringBack(one)}
            >
              Bring back
            </button>
          </li>
        ))}
      </ul>
      {problem && <p class="blank-problem">{problem}</p>}
    </>
  );
}
