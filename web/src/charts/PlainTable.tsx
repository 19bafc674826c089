import { useDates } from '../units/useDates.ts';
import type { Column } from './csv.ts';
import { shownCell } from './shownCell.ts';

interface PlainTableProps<Row> {
  readonly label: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly testId?: string;
}

/** Rows as a plain table that scrolls within itself. */
export function PlainTable<Row>({ label, columns, rows, testId }: PlainTableProps<Row>) {
  const dates = useDates();
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="table-scroll tall" tabIndex={0} aria-label={label} data-testid={testId}>
      <table>
        <thead>
          <tr>
            {columns.map(({ head, headIn, number }) => (
              <th key={head} scope="col" class={number ? 'number' : undefined}>
                {headIn?.(dates) ?? head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              {columns.map((column) => (
                <td key={column.head} class={column.number ? 'number' : undefined}>
                  {shownCell(column, row, dates)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
