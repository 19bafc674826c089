import type { RegionRun } from './useRegion.ts';

const many = (count: number): string => count.toLocaleString('en-US');

/** How far the stations are, with the ways to begin and to stop. */
export function RegionProgress({ run, count }: { run: RegionRun; count: number }) {
  const { phase, answer, fresh, begin, stop } = run;
  const done = fresh && answer !== null ? answer.rows.length : 0;
  const of = fresh && answer !== null ? answer.start.stations : null;
  if (phase === 'ended') return null;
  return (
    <div class="region-progress" data-testid="region-progress" data-phase={phase}>
      {phase === 'waiting' && (
        <>
          <p>
            {many(count)} stations are here; going through all of them takes a while. Name states to look at
            fewer.
          </p>
          <button type="button" class="button" data-testid="region-begin" onClick={begin}>
            Look at the stations
          </button>
        </>
      )}
      {(phase === 'asking' || phase === 'coming') && (
        <>
          <p>{of === null ? 'Reading the records…' : `${many(done)} of ${many(of)} stations`}</p>
          <progress aria-label="Stations" max={1} value={of === null ? undefined : done / of} />
          <button type="button" class="small-button" data-testid="region-stop" onClick={stop}>
            Stop
          </button>
        </>
      )}
      {phase === 'stopped' && (
        <>
          <p data-testid="region-stopped">
            Stopped{of === null ? '' : ` after ${many(done)} of ${many(of)} stations; what was done stays`}.
          </p>
          <button type="button" class="small-button" data-testid="region-begin" onClick={begin}>
            From the beginning
          </button>
        </>
      )}
    </div>
  );
}
