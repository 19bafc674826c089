import { useState } from 'preact/hooks';
import type { Removed } from '../api/contract.ts';
import { takeLastRemoved } from './lastRemoved.ts';
import { RemovedList } from './RemovedList.tsx';
import type { ShelfPath } from './shelf.ts';

interface JustRemovedProps {
  readonly shelf: ShelfPath;
  readonly noun: string;
  /** All that are removed at present, so that the note goes once it is brought back. */
  readonly removed: readonly Removed[];
  readonly back: () => void;
}

/** Says what was just removed, with the way back. */
export function JustRemoved({ shelf, noun, removed, back }: JustRemovedProps) {
  const [last] = useState(() => takeLastRemoved(shelf));
  const still = removed.filter(({ id }) => id === last?.id);
  if (still.length === 0) return null;
  return (
    <section class="note" role="status" data-testid="just-removed">
      <p class="note-title">The {noun} was removed.</p>
      <RemovedList shelf={shelf} removed={still} back={back} />
    </section>
  );
}
