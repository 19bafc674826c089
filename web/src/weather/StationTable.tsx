import { useMemo, useState } from 'preact/hooks';
import type { StationExtent } from '../api/contract.ts';
import type { DateWords } from '../units/dates.ts';
import { heightNumber, heightUnit, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { weatherAddress } from './weatherAddress.ts';

const YEAR_DAYS = 365.25;
/** Rows shown at first, and at most; a search narrows the rest. */
const FIRST_ROWS = 25;
const MOST_ROWS = 1000;
const COLLATOR = new Intl.Collator('en-US', { numeric: true });

interface SortableColumn {
  readonly key: string;
  readonly head: (units: Units) => string;
  readonly cell: (station: StationExtent, units: Units, dates: DateWords) => string;
  readonly order: (station: StationExtent) => string | number;
  readonly number?: boolean;
}

const COLUMNS: readonly SortableColumn[] = [
  { key: 'id', head: () => 'Id', cell: ({ id }) => id, order: ({ id }) => id },
  {
    key: 'first',
    head: () => 'From',
    cell: ({ firstDate }, _units, dates) => dates.short(firstDate),
    order: ({ firstDate }) => firstDate,
  },
  {
    key: 'last',
    head: () => 'To',
    cell: ({ lastDate }, _units, dates) => dates.short(lastDate),
    order: ({ lastDate }) => lastDate,
  },
  {
    key: 'rain',
    head: () => 'Years of rain',
    cell: ({ rainDays }) => (rainDays / YEAR_DAYS).toFixed(1),
    order: ({ rainDays }) => rainDays,
    number: true,
  },
  {
    key: 'temperatures',
    head: () => 'Years of temperatures',
    cell: ({ temperatureDays }) => (temperatureDays / YEAR_DAYS).toFixed(1),
    order: ({ temperatureDays }) => temperatureDays,
    number: true,
  },
  {
    key: 'height',
    head: (units) => `Height, ${heightUnit(units)}`,
    cell: ({ elevationM }, units) => (elevationM === null ? '–' : heightNumber(elevationM, units)),
    order: ({ elevationM }) => elevationM ?? Number.NEGATIVE_INFINITY,
    number: true,
  },
];
const NAME: SortableColumn = {
  key: 'name',
  head: () => 'Station',
  cell: ({ name }) => name,
  order: ({ name }) => name,
};

/** All stations whose records are here; to be searched, and sorted by any column. */
export function StationTable({ stations, units }: { stations: readonly StationExtent[]; units: Units }) {
  const dates = useDates();
  const [search, setSearch] = useState('');
  const [all, setAll] = useState(false);
  const [sort, setSort] = useState({ key: 'name', down: false });
  const found = useMemo(() => {
    const words = search.toLowerCase().split(/\s+/).filter(Boolean);
    const column = [NAME, ...COLUMNS].find(({ key }) => key === sort.key) ?? NAME;
    return stations
      .filter(({ id, name, source }) =>
        words.every((word) => `${id} ${name} ${source}`.toLowerCase().includes(word)),
      )
      .toSorted((a, b) => {
        const [one, other] = [column.order(a), column.order(b)];
        const order =
          typeof one === 'number' && typeof other === 'number'
            ? one - other
            : COLLATOR.compare(`${one}`, `${other}`);
        return sort.down ? -order : order;
      });
  }, [stations, search, sort]);
  const rows = found.slice(0, all ? MOST_ROWS : FIRST_ROWS);
  const head = ({ key, head: text, number }: SortableColumn) => (
    <th
      key={key}
      scope="col"
      class={number ? 'number' : undefined}
      aria-sort={sort.key === key ? (sort.down ? 'descending' : 'ascending') : undefined}
    >
      <button
        type="button"
        class="sort"
        onClick={() => setSort({ key, down: sort.key === key ? !sort.down : number === true })}
      >
        {text(units)}
      </button>
    </th>
  );
  return (
    <section class="all-stations" aria-labelledby="all-title">
      <div class="section-head">
        <h2 id="all-title">Stations here</h2>
        <div class="search">
          <label for="station-search">Search by name, id or file</label>
          <div class="frame">
            <input
              id="station-search"
              type="search"
              autocomplete="off"
              spellcheck={false}
              data-testid="station-search"
              value={search}
              onInput={({ currentTarget }) => setSearch(currentTarget.value)}
            />
          </div>
        </div>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="table-scroll" tabIndex={0} aria-label="Table of the stations">
        <table class="stations" data-testid="stations">
          <thead>
            <tr>
              {head(NAME)}
              {COLUMNS.map(head)}
            </tr>
          </thead>
          <tbody>
            {rows.map((station) => (
              <tr key={station.id}>
                <th scope="row">
                  <a href={weatherAddress({ station: station.id })}>
                    {station.name.replace(/ \(invented\)$/, '')}
                  </a>
                  {station.invented && <span class="tag">invented</span>}
                </th>
                {COLUMNS.map(({ key, cell, number }) => (
                  <td key={key} class={number ? 'number' : undefined}>
                    {cell(station, units, dates)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="small" role="status">
        {found.length === 0
          ? 'No station is called so.'
          : rows.length < found.length
            ? `${rows.length} of ${found.length.toLocaleString('en-US')} are shown${all ? ': narrow the search' : ''}.`
            : search && `${found.length} of ${stations.length} found.`}
      </p>
      {rows.length < found.length && !all && (
        <button type="button" class="quiet" onClick={() => setAll(true)}>
          Show more
        </button>
      )}
    </section>
  );
}
