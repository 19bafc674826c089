import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { NearestStations, StationExtent } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { go } from '../shell/places.ts';
import { useQuestionLink } from '../shell/useQuestionLink.ts';
import type { Units } from '../units/units.ts';
import { asking, useWording } from '../units/useDates.ts';
import { InboxPanel } from './InboxPanel.tsx';
import { StationMap } from './map/StationMap.tsx';
import { NearList } from './NearList.tsx';
import { PlaceForm } from './PlaceForm.tsx';
import { StationTable } from './StationTable.tsx';
import { stationCount } from './stationWords.ts';
import { nearQuery, type SoughtPlace, type WeatherAddress, weatherAddress } from './weatherAddress.ts';

interface OverviewProps {
  readonly asked: WeatherAddress;
  readonly units: Units;
}

/** All records that are here: where they lie, which one suits a place, and how more come in. */
export function Overview({ asked: { place, elevationM }, units }: OverviewProps) {
  const list = useFetched<{ stations: StationExtent[] }>('/api/stations');
  const wording = useWording();
  const near = useFetched<NearestStations>(
    place === null ? null : asking(nearQuery(place, elevationM), wording),
  );
  const ask = useQuestionLink(units);
  useEffect(() => {
    document.title = 'Weather records · Drywake';
  }, []);
  const choose = (sought: SoughtPlace, height: number | null, entry: 'push' | 'replace' = 'push') =>
    go(weatherAddress({ place: sought, elevationM: height }), entry);
  const stations = list.data?.stations ?? [];
  const found = near.data;
  const point = place?.kind === 'point' ? place : (found?.place ?? null);
  const suggested = found?.stations.find(({ id }) => id === found.suggested) ?? null;
  return (
    <div class="desk weather">
      <aside class="margin" aria-label="Place and files">
        <h2 class="margin-title">Which station for the field?</h2>
        <PlaceForm
          place={place}
          elevationM={elevationM}
          units={units}
          refusal={near.problem}
          choose={(sought, height) => choose(sought, height)}
        />
        <InboxPanel
          imported={() => {
            list.reload();
            near.reload();
          }}
        />
      </aside>
      <main class="page">
        <h1 class="place-title">Weather records</h1>
        <p class="lede" data-testid="station-count">
          {list.data ? stationCount(stations) : 'Reading the list of stations…'}
        </p>
        <p class="do-row to-margin">
          {near.problem && <span>The place is not clear:</span>}
          <a href="#sought-place">Type the place</a>
          <a href="#inbox-title">Bring in files</a>
        </p>
        {(list.gone || near.gone) && <GoneNote retry={list.gone ? list.reload : near.reload} />}
        {list.problem && <ProblemNote problem={list.problem} />}
        <StationMap
          stations={stations}
          point={point}
          suggested={suggested}
          choose={(at, entry) => choose({ kind: 'point', ...at }, elevationM, entry)}
        />
        {found && <NearList near={found} units={units} ask={ask} />}
        {stations.length > 0 && <StationTable stations={stations} units={units} />}
      </main>
    </div>
  );
}
