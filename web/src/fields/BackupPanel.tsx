import { useState } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { Problem, RestoreResult } from '../api/contract.ts';
import { RefusedError, requestJson } from '../api/requestJson.ts';
import { DropFile } from '../keep/DropFile.tsx';

type Outcome =
  | { readonly result: RestoreResult }
  | { readonly problem: Problem }
  | { readonly unread: string }
  | { readonly gone: true }
  | null;

/** Everything in one file, and everything from one file; asked once before it takes the place of what is here. */
export function BackupPanel({ restored }: { restored: () => void }) {
  const [given, setGiven] = useState<{ readonly name: string; readonly backup: unknown } | null>(null);
  const [outcome, setOutcome] = useState<Outcome>(null);

  async function read(file: File): Promise<void> {
    setOutcome(null);
    setGiven(null);
    try {
      setGiven({ name: file.name, backup: JSON.parse(await file.text()) as unknown });
    } catch {
      setOutcome({ unread: file.name });
    }
  }

  async function restore(backup: unknown): Promise<void> {
    try {
      const result = await requestJson<RestoreResult>('/api/restore', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ replace: true, backup }),
      });
      setOutcome({ result });
      setGiven(null);
      restored();
    } catch (error) {
      setOutcome(error instanceof RefusedError ? { problem: error.problem } : { gone: true });
    }
  }

  return (
    <div class="files-panel">
      <p class="do-row">
        <a class="button" href="/api/backup" download data-testid="backup-out">
          Save everything in one file
        </a>
      </p>
      <p class="small">Fields and labels with every version of each, and the last answers.</p>
      <DropFile
        words="Drop such a file here to restore it, or"
        accept=".json,application/json"
        testId="backup-in"
        take={(file) => void read(file)}
      />
      {given !== null && (
        <div class="note" data-testid="restore-ask">
          <p class="note-title">Put {given.name} in the place of everything that is here?</p>
          <p>What is here now is kept as a backup in the data folder.</p>
          <div class="do-row">
            <button
              type="button"
              class="button"
              data-testid="restore-yes"
              onClick={() => void restore(given.backup)}
            >
              Yes, restore it
            </button>
            <button type="button" class="quiet" onClick={() => setGiven(null)}>
              No, leave everything as it is
            </button>
          </div>
        </div>
      )}
      <div role="status">
        {outcome !== null && 'result' in outcome && (
          <div class="note" data-testid="restored">
            <p class="note-title">
              Restored: fields {outcome.result.fields}, label entries {outcome.result.labels}, removed ones
              included.
            </p>
            {outcome.result.keptAs !== null && (
              <p>What was here before is kept as {outcome.result.keptAs}.</p>
            )}
          </div>
        )}
      </div>
      {outcome !== null && 'unread' in outcome && (
        <p class="blank-problem">
          {outcome.unread} is no backup: it cannot be read as JSON. Choose a file that was saved here.
        </p>
      )}
      {outcome !== null && 'problem' in outcome && <ProblemNote problem={outcome.problem} />}
      {outcome !== null && 'gone' in outcome && <GoneNote />}
    </div>
  );
}
