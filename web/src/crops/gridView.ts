import type { CropGrid, CropRow } from '../api/contract.ts';
import type { Years } from './cropsAddress.ts';

/** Columns that can be read side by side. */
const MOST_COLUMNS = 60;

/** What a cell says: the label does not allow it, no carryover is reckoned, or odds. */
export type Cell =
  | { readonly kind: 'barred' }
  | { readonly kind: 'free' }
  | { readonly kind: 'odds'; readonly odds: number };

/** A column of the grid: its date, and its place in the answer’s dates. */
export interface GridColumn {
  readonly date: string;
  readonly index: number;
}

/** The columns shown: all dates, or every so many where there are more than can be read. */
export function columnsOf(dates: readonly string[]): { columns: GridColumn[]; every: number } {
  const every = Math.max(1, Math.ceil(dates.length / MOST_COLUMNS));
  return {
    columns: dates.map((date, index) => ({ date, index })).filter(({ index }) => index % every === 0),
    every,
  };
}

/** Odds of a row in all years, or in a third of them. */
export const oddsIn = (row: CropRow, years: Years): readonly number[] | null =>
  years === 'all' ? row.odds : row[years];

export function cellOf(row: CropRow, { date, index }: GridColumn, years: Years): Cell {
  if (date < row.labelDate) return { kind: 'barred' };
  const odds = oddsIn(row, years);
  return odds === null ? { kind: 'free' } : { kind: 'odds', odds: odds[index] };
}

/** The first column on or after a date, if it is not the first of all; that is where the date is marked. */
export function columnOfDate(columns: readonly GridColumn[], date: string | null): number | null {
  if (date === null) return null;
  const at = columns.findIndex((column) => column.date >= date);
  return at > 0 || columns[0]?.date === date ? at : null;
}

/** The column that a planting date falls into: the last one not after it, within one step of the end. */
export function columnAround(columns: readonly GridColumn[], date: string): number | null {
  const after = columns.findIndex((column) => column.date > date);
  if (after > 0) return after - 1;
  return after === -1 && columns.at(-1)?.date === date ? columns.length - 1 : null;
}

/** Months over the columns: how many of them each one spans. */
export function monthSpans(columns: readonly GridColumn[]): { month: string; columns: number }[] {
  const spans: { month: string; columns: number }[] = [];
  for (const { date } of columns) {
    const month = date.slice(0, 7);
    const last = spans.at(-1);
    if (last?.month === month) last.columns++;
    else spans.push({ month, columns: 1 });
  }
  return spans;
}

/** Rows that the label opens within the dates, and those it does not; the asked crop’s row always stays. */
export function splitRows({ crops, dates }: CropGrid, own: string): { open: CropRow[]; barred: CropRow[] } {
  const last = dates.at(-1) ?? '';
  const opens = (row: CropRow) => row.labelDate <= last || row.crop === own;
  return { open: crops.filter(opens), barred: crops.filter((row) => !opens(row)) };
}

/** Where the focus goes from a cell on a key; null for keys that do not move it. */
export function moveOn(
  key: string,
  at: { readonly row: number; readonly column: number },
  size: { readonly rows: number; readonly columns: number },
): { row: number; column: number } | null {
  const held = (value: number, end: number) => Math.max(0, Math.min(end - 1, value));
  const to = (row: number, column: number) => ({
    row: held(row, size.rows),
    column: held(column, size.columns),
  });
  switch (key) {
    case 'ArrowLeft':
      return to(at.row, at.column - 1);
    case 'ArrowRight':
      return to(at.row, at.column + 1);
    case 'ArrowUp':
      return to(at.row - 1, at.column);
    case 'ArrowDown':
      return to(at.row + 1, at.column);
    case 'Home':
      return to(at.row, 0);
    case 'End':
      return to(at.row, size.columns - 1);
    case 'PageUp':
      return to(0, at.column);
    case 'PageDown':
      return to(size.rows - 1, at.column);
    default:
      return null;
  }
}
