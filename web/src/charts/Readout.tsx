import { useDates } from '../units/useDates.ts';
import type { Column } from './csv.ts';
import { shownCell } from './shownCell.ts';

/** The numbers of the row that is pointed at, under the names that its columns have in the table. */
export function Readout<Row>({ columns, row }: { columns: readonly Column<Row>[]; row: Row | null }) {
  const dates = useDates();
  return (
    <p class="readout" data-testid="readout">
      {row !== null &&
        columns.map((column) => {
          const { head, headIn } = column;
          const value = shownCell(column, row, dates);
          return (
            value !== null &&
            value !== '' && (
              <span key={head}>
                {headIn?.(dates) ?? head} <b>{value}</b>
              </span>
            )
          );
        })}
    </p>
  );
}
