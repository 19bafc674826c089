import type { FileState, GivenFile } from './inboxQueue.ts';
import { weatherAddress } from './weatherAddress.ts';

/** Refusals that more words about the file can mend. */
const MORE_TO_SAY = /^(UNITS|DATES|STATION_UNNAMED|COLUMNS)/;

const size = (bytes: number) =>
  bytes < 1e6
    ? `${Math.max(1, Math.round(bytes / 1e3))} kB`
    : `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
const many = (count: number) => count.toLocaleString('en-US');

/** One file that was given: its name, how far it is, and what became of it. */
export function FileLine({ given: { file, state }, again }: { given: GivenFile; again: () => void }) {
  const isUnderWay = state.kind === 'sending' || state.kind === 'reading';
  return (
    <li data-state={state.kind} data-testid="given-file">
      <p class="given-name">
        <span>{file.name}</span> <small>{size(file.size)}</small>
      </p>
      {isUnderWay && (
        <progress
          aria-label={`Import of ${file.name}`}
          max={1}
          value={state.kind === 'reading' ? state.fractionDone : undefined}
        />
      )}
      <Outcome state={state} />
      {(state.kind === 'failed' || state.kind === 'stopped') && (
        <button type="button" class="quiet" onClick={again} aria-label={`Send ${file.name} again`}>
          Send again
        </button>
      )}
    </li>
  );
}

function Outcome({ state }: { state: FileState }) {
  switch (state.kind) {
    case 'waiting':
      return <p>Waits for its turn.</p>;
    case 'sending':
      return <p>Is being sent…</p>;
    case 'reading':
      return <p>{Math.round(state.fractionDone * 100)} % read</p>;
    case 'stopped':
      return <p>Stopped; nothing of it was kept.</p>;
    case 'list-kept':
      return <p>Kept: records sent from now on take their names and positions from it.</p>;
    case 'failed':
      return (
        <div class="given-problem">
          <p>{state.message}</p>
          <p>
            {MORE_TO_SAY.test(state.code)
              ? 'Say it under “What the files do not say”, then send it again.'
              : state.hint}
          </p>
        </div>
      );
    case 'imported': {
      const { stations } = state;
      const sum = (key: 'inserted' | 'replaced' | 'dropped') =>
        stations.reduce((total, station) => total + station[key], 0);
      const notes = [...new Set(stations.flatMap((station) => station.notes))];
      const [only] = stations;
      return (
        <div>
          <p>
            {stations.length === 1 ? (
              <>
                <a href={weatherAddress({ station: only.stationId })}>{only.stationId}</a>, {only.firstDate}{' '}
                to {only.lastDate}.
              </>
            ) : (
              `${many(stations.length)} stations.`
            )}{' '}
            {many(sum('inserted'))} values new
            {sum('replaced') > 0 && `, ${many(sum('replaced'))} replaced`}
            {sum('dropped') > 0 && `, ${many(sum('dropped'))} dropped by flag or as impossible`}.
          </p>
          {notes.slice(0, 5).map((note) => (
            <p key={note}>{note}</p>
          ))}
        </div>
      );
    }
  }
}
