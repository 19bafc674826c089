import { useState } from 'preact/hooks';
import { OddsChip } from '../answer/OddsChip.tsx';
import { TableRoom } from '../answer/TableRoom.tsx';
import type { Alternatives } from '../api/contract.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';
import type { Change } from './Alternatives.tsx';

type Row = Alternatives['otherCrops'][number];

interface OtherCropsProps {
  readonly rows: readonly Row[];
  readonly unjudged: Alternatives['cropsUnjudged'];
  readonly plantOn: string;
  readonly change: Change;
}

/** Rows shown before all are asked for. */
const FIRST = 8;

/** Other crops on the same date, those that label and limit allow first. */
export function OtherCrops({ rows, unjudged, plantOn, change }: OtherCropsProps) {
  const dates = useDates();
  const [all, setAll] = useState(false);
  if (rows.length === 0) return null;
  const allowed = rows.filter(({ withinLimit }) => withinLimit).length;
  const shown = all ? rows : rows.slice(0, FIRST);
  return (
    <div>
      <TableRoom label="other crops">
        <table class="wide" data-testid="other-crops">
          <caption>
            <span class="caption-words">
              {allowed === 0
                ? `No other crop is within label and limit on ${dates.monthDay(plantOn)}.`
                : `${allowed} of ${rows.length} other crops are within label and limit on ${dates.monthDay(plantOn)}.`}
            </span>
          </caption>
          <thead>
            <tr>
              <th scope="col">Crop</th>
              <th scope="col" class="number">
                Odds, in 20
              </th>
              <th scope="col">
                <Term name="label date" />
              </th>
              <th scope="col">
                <Term name="clear date" />
              </th>
              <th scope="col">Interval</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <tr key={row.crop} data-allowed={row.withinLimit ? '' : undefined}>
                <th scope="row">
                  <button
                    type="button"
                    class="link"
                    onClick={() => change({ crop: row.crop, interval: undefined })}
                  >
                    {row.crop}
                  </button>
                  {!row.withinLimit && <small class="not-yet"> not yet</small>}
                </th>
                <td class="number">
                  {row.oddsAtPlanting === null ? 'none' : <OddsChip odds={row.oddsAtPlanting} />}
                </td>
                <td>{dates.near(row.labelDate, plantOn)}</td>
                <td>{row.clearDate === null ? 'not in the search' : dates.near(row.clearDate, plantOn)}</td>
                <td class={row.interval.fromMemory ? 'from-memory' : undefined}>
                  {row.interval.text}
                  {row.interval.fromMemory && <small> from memory</small>}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableRoom>
      {rows.length > FIRST && (
        <button type="button" class="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'Show fewer' : `Show all ${rows.length}`}
        </button>
      )}
      {unjudged.length > 0 && (
        <p class="section-note">
          Without a known interval, so read your label: {unjudged.map(({ name }) => name).join(', ')}.
        </p>
      )}
    </div>
  );
}
