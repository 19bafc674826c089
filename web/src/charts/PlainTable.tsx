import type { Column } from './csv.ts';

interface PlainTableProps<Row> {
  readonly label: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly testId?: string;
}

/** Rows as a plain table that scrolls within itself. */
export function PlainTable<Row>({ label, columns, rows, testId }: PlainTableProps<Row>) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="table-scroll tall" tabIndex={0} aria-label={label} data-testid={testId}>
      <table>
        <thead>
          <tr>
            {columns.map(({ head, number }) => (
              <th key={head} scope="col" class={number ? 'number' : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              {columns.map(({ head, cell, number }) => (
                <td key={head} class={number ? 'number' : undefined}>
                  {cell(row)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
