import type { DateWords } from '../units/dates.ts';
import type { Column } from './csv.ts';

/** A cell as a table shows it: dates as the reader likes them. */
export function shownCell<Row>(
  { cell, dates: holds }: Column<Row>,
  row: Row,
  dates: DateWords,
): string | number | null {
  const value = cell(row);
  if (holds === undefined || typeof value !== 'string') return value;
  return holds === 'month' ? dates.month(value) : dates.short(value);
}
