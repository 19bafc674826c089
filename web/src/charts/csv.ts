import type { DateWords } from '../units/dates.ts';

/** A column of a chart’s table and of its file. */
export interface Column<Row> {
  /** Head, with the unit where there is one. */
  readonly head: string;
  /** The head as a table writes it, where it holds a date. */
  readonly headIn?: (dates: DateWords) => string;
  readonly cell: (row: Row) => string | number | null;
  /** The cells are `YYYY-MM-DD` or `YYYY-MM`: a file keeps them, a table writes them as the reader likes. */
  readonly dates?: 'day' | 'month';
  /** Numbers stand flush right. */
  readonly number?: boolean;
}

/** Rows as comma-separated values, heads first, lines ending as RFC 4180 has it. */
export function csvOf<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const lines = [
    columns.map(({ head }) => head),
    ...rows.map((row) => columns.map(({ cell }) => cell(row) ?? '')),
  ];
  return lines.map((line) => `${line.map(quoted).join(',')}\r\n`).join('');
}

/** Quotes where needed; a text that a spreadsheet would take for a formula is marked as text. */
function quoted(value: string | number): string {
  const text = typeof value === 'string' && /^'*[=+\-@\t\r＝＋－＠]/.test(value) ? `'${value}` : `${value}`;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
