import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { type Column, csvOf } from './csv.ts';
import { saveFile } from './saveFile.ts';

interface ChartFigureProps<Row> {
  readonly testId: string;
  /** What the chart shows, as a finding. */
  readonly caption: string;
  /** How to read it: signs and lines. */
  readonly legend?: ComponentChildren;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly fileName: string;
  /** More buttons beside those for table and file. */
  readonly tools?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A chart with its finding, its table one tap away and its rows as a file. */
export function ChartFigure<Row>(props: ChartFigureProps<Row>) {
  const { testId, caption, legend, columns, rows, fileName, tools, children } = props;
  const [open, setOpen] = useState(false);
  return (
    <figure class="chart" data-testid={testId}>
      <figcaption>{caption}</figcaption>
      {legend && <div class="legend">{legend}</div>}
      {children}
      <div class="chart-tools">
        <button type="button" class="quiet" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? 'Hide the table' : 'As a table'}
        </button>
        <button
          type="button"
          class="quiet"
          aria-label={`Save the rows of this chart as CSV: ${caption}`}
          onClick={() => saveFile(fileName, csvOf(columns, rows))}
        >
          CSV
        </button>
        {tools}
      </div>
      {open && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        <section class="table-scroll tall" tabIndex={0} aria-label={`Table: ${caption}`}>
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
      )}
    </figure>
  );
}
