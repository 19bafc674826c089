import { OddsChip } from '../answer/OddsChip.tsx';
import { TableRoom } from '../answer/TableRoom.tsx';
import type { Alternatives } from '../api/contract.ts';
import { namedRows } from '../compare/compareAddress.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';

interface OtherResidualsProps {
  readonly rows: Alternatives['otherResiduals'];
  readonly crop: string;
  readonly plantOn: string;
}

/** Residuals that label and limit would have allowed before this crop on this date. */
export function OtherResiduals({ rows, crop, plantOn }: OtherResidualsProps) {
  const dates = useDates();
  if (rows.length === 0) {
    return (
      <p>
        No other residual, of the catalogue or of your labels, would have done before {crop} on that date.
      </p>
    );
  }
  return (
    <TableRoom label="other residuals">
      <table class="wide" data-testid="other-residuals">
        <caption>
          <span class="caption-words">
            Before {crop} on {dates.monthDay(plantOn)}, {rows.length}{' '}
            {rows.length === 1 ? 'other residual' : 'other residuals'} would have done.
          </span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Residual</th>
            <th scope="col">Group</th>
            <th scope="col" class="number">
              Odds, in 20
            </th>
            <th scope="col" class="number">
              Weeks of control
            </th>
            <th scope="col">
              <Term name="label date" />
            </th>
            <th scope="col">Interval</th>
          </tr>
        </thead>
        <tbody>
          {namedRows(rows).map((row) => (
            <tr key={row.residual}>
              <th scope="row">{row.residual}</th>
              <td>{row.group}</td>
              <td class="number">
                {row.oddsAtPlanting === null ? 'none' : <OddsChip odds={row.oddsAtPlanting} />}
              </td>
              <td class="number">{row.weeksOfControl?.middle?.toFixed(0) ?? 'not known'}</td>
              <td>{dates.near(row.labelDate, plantOn)}</td>
              <td class={row.interval.fromMemory ? 'from-memory' : undefined}>
                {row.interval.text}
                {row.interval.fromMemory && <small> from memory</small>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}
