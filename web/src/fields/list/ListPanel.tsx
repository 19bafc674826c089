import { GoneNote, ProblemNote } from '../../answer/ProblemNote.tsx';
import type { Batch } from '../../api/contract.ts';
import { saveCsv, saveJson } from '../../charts/saveFile.ts';
import { DropFile } from '../../keep/DropFile.tsx';
import type { Units } from '../../units/units.ts';
import { RankedRows } from './RankedRows.tsx';
import { RefusedRows } from './RefusedRows.tsx';
import { useListAnswers } from './useListAnswers.ts';
import '../../style/list.css';

const many = (count: number) => count.toLocaleString('en-US');

/** A list of fields out of a file, answered and ranked by the area at risk; nothing of it is kept here. */
export function ListPanel({ units }: { units: Units }) {
  const { state, send, stop } = useListAnswers();
  return (
    <div class="files-panel list-panel">
      <p>
        One row for each field, whether it is kept here or not. The answers come behind its own columns, most
        area at risk first; nothing of the list is kept.
      </p>
      <DropFile words="Drop the list here as CSV, or" accept=".csv,text/csv" testId="list-in" take={send} />
      <p class="small">
        <a href="/api/batch/template.csv" download data-testid="list-template">
          A list to start from
        </a>{' '}
        shows the columns. Those that mean nothing here are kept.
      </p>
      <div role="status">
        {state.kind === 'asking' && (
          <p data-testid="list-progress">
            {state.of === null
              ? `${state.name} is being sent…`
              : `${many(state.done)} of ${many(state.of)} rows of ${state.name}`}
          </p>
        )}
        {state.kind === 'stopped' && (
          <p data-testid="list-stopped">Stopped; the answers so far were dropped.</p>
        )}
        {state.kind === 'answered' && <p class="note-title">{saySome(state.batch)}</p>}
      </div>
      {state.kind === 'asking' && (
        <div class="do-row">
          <progress
            aria-label={`Answers to ${state.name}`}
            max={1}
            value={state.of === null ? undefined : state.done / state.of}
          />
          <button type="button" class="small-button" data-testid="list-stop" onClick={stop}>
            Stop
          </button>
        </div>
      )}
      {state.kind === 'refused' && <ProblemNote problem={state.problem} />}
      {state.kind === 'gone' && <GoneNote />}
      {state.kind === 'answered' && (
        <div data-testid="list-answers">
          <div class="do-row">
            <button
              type="button"
              class="small-button"
              data-testid="list-csv"
              onClick={() => saveCsv('drywake-list.csv', `\uFEFF${state.csv}`)}
            >
              Save as CSV
            </button>
            <button
              type="button"
              class="small-button"
              data-testid="list-json"
              onClick={() => saveJson('drywake-list.json', state.batch)}
            >
              Save as JSON
            </button>
          </div>
          <RankedRows rows={state.batch.rows} units={units} />
          <RefusedRows rows={state.batch.rows} />
          {state.batch.cautions.map((caution) => (
            <p key={caution} class="small">
              {caution}
            </p>
          ))}
        </div>
      )}
    </div>
  );
}

function saySome({ file, answered, refused, unknownColumns }: Batch): string {
  const rows = `${file}: ${many(answered)} ${answered === 1 ? 'row' : 'rows'} answered`;
  const not = refused === 0 ? '' : `, ${many(refused)} not`;
  const kept =
    unknownColumns.length === 0 ? '' : ` Kept without a meaning here: ${unknownColumns.join(', ')}.`;
  return `${rows}${not}.${kept}`;
}
