import { guardCell } from './tables/cells.ts';

/** A cell of a flat table; dates are texts YYYY-MM-DD. */
export type Cell = string | number | boolean | null;

/** One column of a flat table, as CSV and Parquet write it. */
export interface FlatColumn<Row> {
  /** Name with its unit. */
  readonly name: string;
  readonly type: 'text' | 'number' | 'whole' | 'truth' | 'date';
  readonly cell: (row: Row) => Cell;
}

/** A table of rows as CSV, RFC 4180 with line feeds; texts that spreadsheets would take for formulas are defused. */
export function csvOf<Row>(columns: readonly FlatColumn<Row>[], rows: readonly Row[]): string {
  const lines = [
    columns.map(({ name }) => quoted(guardCell(name))),
    ...rows.map((row) => cellsOf(columns, row)),
  ];
  return lines.map((cells) => `${cells.join(',')}\n`).join('');
}

const cellsOf = <Row>(columns: readonly FlatColumn<Row>[], row: Row): string[] =>
  columns.map(({ cell }) => {
    const value = cell(row);
    return value === null ? '' : typeof value === 'string' ? quoted(guardCell(value)) : String(value);
  });

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
