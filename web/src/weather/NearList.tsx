import type { NearestStations, QuestionInput } from '../api/contract.ts';
import type { Column } from '../charts/csv.ts';
import { saveTable } from '../charts/saveFile.ts';
import { shownCell } from '../charts/shownCell.ts';
import { distanceNumber, distanceUnit, heightNumber, heightUnit, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { sayPoint, weatherAddress } from './weatherAddress.ts';

interface NearListProps {
  readonly near: NearestStations;
  readonly units: Units;
  readonly ask: (change: Partial<QuestionInput>) => string;
}

type Near = NearestStations['stations'][number];

/** Stations around the place, nearest first, and why one of them is suggested. */
export function NearList({ near, units, ask }: NearListProps) {
  const { place, suggested, reason, stations, withoutPosition } = near;
  const best = stations.find(({ id }) => id === suggested);
  const where = place.name ?? sayPoint(place.latitudeDeg, place.longitudeDeg);
  const columns = columnsIn(units);
  const dates = useDates();
  return (
    <section class="near" data-testid="near" aria-labelledby="near-title">
      <h2 id="near-title">{best ? `For ${where}: take ${best.name}` : `For ${where}: none to take`}</h2>
      <p class="near-reason">{reason}</p>
      {best && (
        <p class="do-row">
          <a class="button" href={ask({ station: best.id, asOf: undefined })}>
            Use this station
          </a>
          <a href={weatherAddress({ station: best.id })}>See its record</a>
        </p>
      )}
      {stations.length > 0 && (
        <>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
          <section class="table-scroll" tabIndex={0} aria-label={`Stations around ${where}`}>
            <table class="stations">
              <thead>
                <tr>
                  <th scope="col">Station</th>
                  {columns.slice(2).map(({ head, number }) => (
                    <th key={head} scope="col" class={number ? 'number' : undefined}>
                      {head}
                    </th>
                  ))}
                  <th scope="col">
                    <span class="unseen">For the question</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {stations.map((station) => (
                  <tr key={station.id} data-suggested={station.id === suggested ? '' : undefined}>
                    <th scope="row">
                      <a href={weatherAddress({ station: station.id })}>{station.name}</a>
                      {station.id === suggested && <span class="tag">suggested</span>}
                    </th>
                    {columns.slice(2).map((column) => (
                      <td key={column.head} class={column.number ? 'number' : undefined}>
                        {shownCell(column, station, dates) ?? '–'}
                      </td>
                    ))}
                    <td>
                      <a
                        href={ask({ station: station.id, asOf: undefined })}
                        aria-label={`Use ${station.name}`}
                      >
                        Use
                      </a>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          <div class="chart-tools">
            <button
              type="button"
              class="quiet"
              onClick={() => saveTable('drywake-stations-near.csv', columns, stations)}
            >
              CSV
            </button>
          </div>
          <p class="small">
            The suggestion is the station with the least distance, to which is added{' '}
            {units === 'us' ? '6 miles for every 330 ft' : '10 km for every 100 m'} of height between,{' '}
            {units === 'us' ? '2.5 miles' : '4 km'} for every year under thirty,{' '}
            {units === 'us' ? '2 miles' : '3 km'} for every per cent of missing rain,{' '}
            {units === 'us' ? '25 miles' : '40 km'} where temperatures would be borrowed, and{' '}
            {units === 'us' ? '2 miles' : '3 km'} for every year since its last day. These weights are our
            own.
            {withoutPosition > 0 &&
              ` ${withoutPosition} ${withoutPosition === 1 ? 'station was' : 'stations were'} left out, the position not being known: send the station list, then the files again.`}
          </p>
        </>
      )}
    </section>
  );
}

function columnsIn(units: Units): Column<Near>[] {
  const signed = (metres: number) =>
    `${metres > 0 ? '+' : metres < 0 ? '−' : ''}${heightNumber(Math.abs(metres), units)}`;
  return [
    { head: 'Station id', cell: ({ id }) => id },
    { head: 'Station', cell: ({ name }) => name },
    {
      head: `Away, ${distanceUnit(units)}`,
      cell: ({ distanceKm }) => distanceNumber(distanceKm, units),
      number: true,
    },
    {
      head: `Higher by, ${heightUnit(units)}`,
      cell: ({ elevationDifferenceM: metres }) => (metres === null ? null : signed(metres)),
      number: true,
    },
    { head: 'Years of rain', cell: ({ years }) => Math.floor(years), number: true },
    { head: 'Days with rain read, %', cell: ({ rainPercent }) => rainPercent.toFixed(1), number: true },
    {
      head: 'With temperatures, %',
      cell: ({ temperaturePercent }) => temperaturePercent.toFixed(0),
      number: true,
    },
    { head: 'Last day', cell: ({ lastDate }) => lastDate, dates: 'day' },
  ];
}
