import { csvOf } from './cells.ts';
import { type Column, cellOf, headerOf, type TableUnits } from './column.ts';
import { type Part, valueAt } from './partPath.ts';
import type { TableShape } from './tableShape.ts';

/** Records as CSV text. What holds for the whole record stands on the first of its rows, the id on all. */
export function writeTable<T extends { readonly id: string }>(
  records: readonly T[],
  { head, lists }: TableShape<T>,
  units: TableUnits,
): string {
  const cells = (columns: readonly Column[], part: Part | undefined) =>
    columns.map((column) => (part === undefined ? '' : cellOf(column, part, units)));
  const [idColumn, ...rest] = head;
  const rows = records.flatMap((record) => {
    const whole = record as unknown as Part;
    const parts = lists.map(({ key }) => (valueAt(whole, key) ?? []) as Part[]);
    const length = Math.max(1, ...parts.map((list) => list.length));
    return Array.from({ length }, (_, row) => [
      cellOf(idColumn, whole, units),
      ...cells(rest, row === 0 ? whole : undefined),
      ...lists.flatMap(({ columns }, index) => cells(columns, parts[index][row])),
    ]);
  });
  const columns = [...head, ...lists.flatMap((list) => list.columns)];
  return csvOf([columns.map((column) => headerOf(column, units)), ...rows]);
}
