import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { StationCheck } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { useQuestionLink } from '../shell/useQuestionLink.ts';
import type { Units } from '../units/units.ts';
import { CompletenessChart } from './CompletenessChart.tsx';
import { RecentChart } from './RecentChart.tsx';
import { StationFacts } from './StationFacts.tsx';
import { StationGaps } from './StationGaps.tsx';
import { sayWorth } from './stationWords.ts';

/** What one station's record is worth. */
export function StationView({ id, units }: { id: string; units: Units }) {
  const {
    data: check,
    problem,
    gone,
    reload,
  } = useFetched<StationCheck>(`/api/weather/${encodeURIComponent(id)}/check`);
  const ask = useQuestionLink(units);
  const name = check?.station.name.replace(/ \(invented\)$/, '') ?? id;
  useEffect(() => {
    document.title = `${name} · Weather records · Drywake`;
  }, [name]);
  return (
    <div class="desk weather">
      <aside class="margin" aria-label="About the station">
        <p class="back">
          <a href="/weather">All stations</a>
        </p>
        {check && <StationFacts check={check} units={units} />}
      </aside>
      <main class="page">
        <p class="field-line">
          Weather record
          {check?.station.invented && <span class="tag">invented</span>}
        </p>
        <h1 class="place-title">{name}</h1>
        {problem && <ProblemNote problem={problem} />}
        {gone && <GoneNote retry={reload} />}
        {check ? (
          <Worth check={check} units={units} use={ask({ station: id, asOf: undefined })} />
        ) : (
          !problem && !gone && <p class="lede">Reading the record…</p>
        )}
      </main>
    </div>
  );
}

function Worth({ check, units, use }: { check: StationCheck; units: Units; use: string }) {
  return (
    <>
      <p class="lede" data-testid="worth">
        {sayWorth(check, units)}
      </p>
      {check.problem ? (
        <ProblemNote problem={{ ...check.problem, details: {} }} />
      ) : (
        <p class="do-row">
          <a class="button" href={use}>
            Use this station
          </a>
        </p>
      )}
      <div class="season">
        {check.recent && <RecentChart check={check} recent={check.recent} units={units} />}
        <CompletenessChart check={check} />
        <StationGaps check={check} units={units} />
        {check.reading.notes.length > 0 && (
          <section aria-labelledby="notes-title">
            <h2 id="notes-title">How it was read</h2>
            {check.reading.notes.map((note) => (
              <p key={note}>{note}</p>
            ))}
          </section>
        )}
      </div>
    </>
  );
}
