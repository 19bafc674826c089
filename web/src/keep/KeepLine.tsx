import { GoneNote } from '../answer/ProblemNote.tsx';
import { useWorded } from '../units/useWorded.ts';
import type { OpenRecord } from './useRecord.ts';

/** How the record stands between page and server, and the way back. */
export function KeepLine<T extends { readonly id: string }>({ open }: { open: OpenRecord<T> }) {
  const { desk, kept, refusal, gone, theirs, undone, sending } = open;
  const worded = useWorded();
  const changed = desk.isChanged();
  const canUndo = kept?.canUndo === true && !changed && theirs === null && !gone;
  return (
    <>
      <div class="keep-line">
        <p role="status" data-testid="keep-state" data-state={stateOf(open, changed)}>
          {WORDS[stateOf(open, changed)]}
          {kept && <span class="keep-version">version {kept.version}</span>}
        </p>
        <button
          type="button"
          class="small-button"
          data-testid="undo"
          disabled={!canUndo || sending}
          onClick={() => void desk.undo()}
        >
          {undone ? 'Bring the change back' : 'Undo the last change'}
        </button>
      </div>
      {gone && <GoneNote retry={() => desk.again()} />}
      {refusal && (
        <div class="note" data-testid="problem">
          <p class="note-title">This cannot be kept yet: {worded(refusal).message}</p>
          <p>What you typed stays here until it can.</p>
        </div>
      )}
    </>
  );
}

const WORDS = {
  kept: 'Everything is kept.',
  sending: 'Keeping…',
  waiting: 'The last changes wait in this browser.',
  apart: 'The last changes wait for your choice.',
} as const;

function stateOf<T extends { readonly id: string }>(
  { theirs, sending, refusal, gone }: OpenRecord<T>,
  changed: boolean,
): keyof typeof WORDS {
  if (theirs !== null) return 'apart';
  if (changed && !sending && (refusal !== null || gone)) return 'waiting';
  return changed ? 'sending' : 'kept';
}
