import type { Column } from './csv.ts';

/** The numbers of the row that is pointed at, under the names that its columns have in the table. */
export function Readout<Row>({ columns, row }: { columns: readonly Column<Row>[]; row: Row | null }) {
  return (
    <p class="readout" data-testid="readout">
      {row !== null &&
        columns.map(({ head, cell }) => {
          const value = cell(row);
          return (
            value !== null &&
            value !== '' && (
              <span key={head}>
                {head} <b>{value}</b>
              </span>
            )
          );
        })}
    </p>
  );
}
