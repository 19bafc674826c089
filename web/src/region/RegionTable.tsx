import { useMemo, useState } from 'preact/hooks';
import { OddsChip } from '../answer/OddsChip.tsx';
import type { RegionRow } from '../api/contract.ts';
import type { DateWords } from '../units/dates.ts';
import { rainText, type Units } from '../units/units.ts';
import { Term } from '../words/Term.tsx';
import { type Measure, shareOf } from './measures.ts';

interface RegionTableProps {
  readonly rows: readonly RegionRow[];
  readonly show: Measure;
  readonly units: Units;
  readonly dates: DateWords;
  readonly picked: string | null;
  readonly pick: (station: string | null) => void;
}

/** Rows drawn at once; the files hold all of them. */
const SHOWN = 100;

/** Every station that answers, in the order of what the map shows; a name reads its numbers out. */
export function RegionTable({ rows, show, units, dates, picked, pick }: RegionTableProps) {
  const [sought, seek] = useState('');
  const rain = show === 'summer' || show === 'warm';
  const ordered = useMemo(() => {
    const sign = rain ? 1 : -1;
    return rows
      .filter(({ figures }) => figures !== null)
      .sort((a, b) => sign * ((shareOf(a, show) ?? sign * 99) - (shareOf(b, show) ?? sign * 99)));
  }, [rows, show, rain]);
  const soils = new Set(rows.map(({ soilClass }) => soilClass)).size > 1;
  const words = sought.trim().toLowerCase();
  const found = ordered.filter(({ name, station }) => `${name} ${station}`.toLowerCase().includes(words));
  if (ordered.length === 0) return null;
  return (
    <section class="region-stations" aria-labelledby="stations-title">
      <div class="section-head">
        <h2 id="stations-title" class="section-title">
          Station by station
        </h2>
        {ordered.length > 8 && (
          <div class="search">
            <label for="seek-station">Find a station</label>
            <div class="frame">
              <input
                id="seek-station"
                type="search"
                value={sought}
                autocomplete="off"
                onInput={({ currentTarget }) => seek(currentTarget.value)}
              />
            </div>
          </div>
        )}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reached by keyboard */}
      <section class="table-scroll tall fixed-first" tabIndex={0} aria-label="Stations, a table">
        <table class="region-table" data-testid="region-table">
          <thead>
            <tr>
              <th scope="col">Station</th>
              {soils && <th scope="col">Soil</th>}
              <th scope="col">This season, in 20</th>
              <th scope="col">Normal year, in 20</th>
              <th scope="col">Label not enough</th>
              <th scope="col">
                <Term name="clear date" />
              </th>
              <th scope="col">June to August rain</th>
              <th scope="col">Warm rain so far</th>
              <th scope="col" class="number">
                Days read
              </th>
            </tr>
          </thead>
          <tbody>
            {found.slice(0, SHOWN).map((row) => (
              <StationRow
                key={row.station}
                row={row}
                units={units}
                dates={dates}
                soil={soils}
                picked={row.station === picked}
                pick={() => pick(row.station === picked ? null : row.station)}
              />
            ))}
          </tbody>
        </table>
      </section>
      {found.length === 0 && <p class="small">No station is called that.</p>}
      {found.length > SHOWN && (
        <p class="small">
          The first {SHOWN} of {found.length.toLocaleString('en-US')} are shown; the files hold all.
        </p>
      )}
    </section>
  );
}

interface StationRowProps {
  readonly row: RegionRow;
  readonly units: Units;
  readonly dates: DateWords;
  /** Whether soils differ from station to station. */
  readonly soil: boolean;
  readonly picked: boolean;
  readonly pick: () => void;
}

function StationRow({ row, units, dates, soil, picked, pick }: StationRowProps) {
  const { figures, name, invented, rainPercent, notNow } = row;
  if (figures === null) return null;
  const { oddsNow, oddsNormal, labelTooShortShare, years, clearDate, summerRain, warmRain } = figures;
  return (
    <tr data-picked={picked ? '' : undefined}>
      <th scope="row">
        <button type="button" class="quiet" aria-pressed={picked} onClick={pick}>
          {name.replace(/ \(invented\)$/, '')}
        </button>
        {invented && <span class="tag">invented</span>}
      </th>
      {soil && <td>{row.soilClass}</td>}
      <td>{oddsNow === null ? <span title={notNow ?? undefined}>–</span> : <OddsChip odds={oddsNow} />}</td>
      <td>
        <OddsChip odds={oddsNormal} />
      </td>
      <td>
        {Math.round(labelTooShortShare * years)} of {years} years
      </td>
      <td>{clearDate === null ? 'not in the search' : dates.short(clearDate)}</td>
      <td>{rainWords(summerRain, units)}</td>
      <td>{rainWords(warmRain, units)}</td>
      <td class="number">{Math.floor(rainPercent)} %</td>
    </tr>
  );
}

function rainWords(rain: { mm: number; percentOfNormal: number | null } | null, units: Units): string {
  if (rain === null) return '–';
  const { mm, percentOfNormal } = rain;
  return `${rainText(mm, units)}${percentOfNormal === null ? '' : `, ${Math.round(percentOfNormal)} %`}`;
}
