import { useState } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { Problem, TableImport } from '../api/contract.ts';
import { RefusedError, requestJson } from '../api/requestJson.ts';
import type { Units } from '../units/units.ts';
import { DropFile } from './DropFile.tsx';

interface FilesPanelProps {
  readonly path: '/api/fields.csv' | '/api/labels.csv';
  readonly noun: string;
  readonly nouns: string;
  readonly units: Units;
  readonly imported: () => void;
}

type Outcome =
  | { readonly result: TableImport }
  | { readonly problem: Problem }
  | { readonly gone: true }
  | null;

/** A table of all records for a spreadsheet, and the way back from one. */
export function FilesPanel({ path, noun, nouns, units, imported }: FilesPanelProps) {
  const [outcome, setOutcome] = useState<Outcome>(null);

  async function send(file: File): Promise<void> {
    try {
      const result = await requestJson<TableImport>(path, {
        method: 'POST',
        headers: { 'content-type': 'text/csv' },
        body: file,
      });
      setOutcome({ result });
      imported();
    } catch (error) {
      setOutcome(error instanceof RefusedError ? { problem: error.problem } : { gone: true });
    }
  }

  return (
    <div class="files-panel">
      <p class="do-row">
        <a class="button" href={`${path}?units=${units}`} download data-testid="csv-out">
          Save all {nouns} as CSV
        </a>
      </p>
      <DropFile
        words={`Drop a CSV of ${nouns} here, with the same columns, or`}
        accept=".csv,text/csv"
        testId="csv-in"
        take={(file) => void send(file)}
      />
      <p class="small">
        A {noun} with an id that is kept takes its place, and undo brings the one before back. Rows at fault
        are named and stop no other.
      </p>
      <div role="status">
        {outcome !== null && 'result' in outcome && <ImportResult result={outcome.result} nouns={nouns} />}
      </div>
      {outcome !== null && 'problem' in outcome && <ProblemNote problem={outcome.problem} />}
      {outcome !== null && 'gone' in outcome && <GoneNote />}
    </div>
  );
}

function ImportResult({
  result: { saved, unchanged, faults },
  nouns,
}: {
  result: TableImport;
  nouns: string;
}) {
  const fresh = saved.filter(({ isNew }) => isNew).length;
  return (
    <div class="note" data-testid="csv-result">
      <p class="note-title">
        {fresh} new, {saved.length - fresh} changed, {unchanged.length} as they were
        {faults.length === 0
          ? '.'
          : `; ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'} in the file.`}
      </p>
      {faults.length > 0 && (
        <ul aria-label={`Faults in the table of ${nouns}`}>
          {faults.map(({ line, column, message }) => (
            <li key={`${line} ${column} ${message}`}>
              Line {line}
              {column !== null && `, column “${column}”`}: {message}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
