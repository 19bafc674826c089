import { OddsChip } from '../answer/OddsChip.tsx';
import { TableRoom } from '../answer/TableRoom.tsx';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';

interface ChangesTableProps {
  readonly testId: string;
  readonly caption: string;
  readonly head: string;
  readonly rows: readonly {
    readonly name: string;
    readonly oddsAtPlanting: number | null;
    readonly clearDate: string | null;
  }[];
  readonly plantOn: string;
}

/** The same question with one thing changed, a row for each value of it. */
export function ChangesTable({ testId, caption, head, rows, plantOn }: ChangesTableProps) {
  const dates = useDates();
  if (rows.length === 0) return null;
  return (
    <TableRoom label={caption}>
      <table class="snug" data-testid={testId}>
        <caption>
          <span class="caption-words">{caption}</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">{head}</th>
            <th scope="col" class="number">
              Odds, in 20
            </th>
            <th scope="col">
              <Term name="clear date" />
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, oddsAtPlanting, clearDate }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td class="number">{oddsAtPlanting === null ? 'none' : <OddsChip odds={oddsAtPlanting} />}</td>
              <td>{clearDate === null ? 'not in the search' : dates.near(clearDate, plantOn)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}
