import { DrywakeError } from '../../errors.ts';
import type { TableImport } from '../../schema/tableImport.ts';
import { meantOf } from '../meant.ts';
import { faultsOf } from '../schemaRefusal.ts';
import { type Column, cellOf, headerOf, readCell, type TableUnits } from './column.ts';
import { type Part, putAt, valueAt } from './partPath.ts';
import { type ReadTable, readCells, type TableRow, unreadable } from './readCells.ts';
import type { ListColumns, TableShape } from './tableShape.ts';

type Fault = TableImport['faults'][number];

/** A record of a table, with the line on which it begins. */
export interface TableRecord<T> {
  readonly line: number;
  readonly record: T;
}

/** A column that the table has, in the units that its head says. */
interface PresentColumn {
  readonly column: Column;
  readonly header: string;
  readonly units: TableUnits;
}

/**
 * Records from CSV text. A record that is kept already takes what the table has columns for; what it has none for stays.
 * A row at fault leaves its record out and no other.
 * @param kept the records that are kept, by id
 * @throws {InvalidInputError} TABLE_UNREADABLE where the text is no such table at all
 */
export function readTable<T extends { readonly id: string }>(
  text: string,
  shape: TableShape<T>,
  kept: ReadonlyMap<string, T>,
): { records: TableRecord<T>[]; faults: Fault[] } {
  const table = readCells(text);
  const faults: Fault[] = unknownColumns(table, shape);
  const head = presentColumns(shape.head, table);
  if (!head.some(({ column }) => column.path === 'id' || shape.idFrom.includes(column.path))) {
    throw unreadable(
      1,
      `no column is headed ${shape.head
        .map(({ header }) => header)
        .slice(0, 3)
        .join(', ')}`,
    );
  }
  const groups = new Map<string, TableRow[]>();
  for (const row of table.rows) {
    const id = idOf(row, head, shape);
    const group = groups.get(id);
    if (group === undefined) groups.set(id, [row]);
    else group.push(row);
  }
  const records: TableRecord<T>[] = [];
  for (const [id, rows] of groups) {
    const read = readRecord(id, rows, { head, table, shape, before: kept.get(id) });
    if ('record' in read) records.push(read);
    else faults.push(...read.faults);
  }
  return { records, faults: faults.sort((a, b) => a.line - b.line) };
}

interface Reading<T extends { readonly id: string }> {
  readonly head: readonly PresentColumn[];
  readonly table: ReadTable;
  readonly shape: TableShape<T>;
  readonly before: T | undefined;
}

function readRecord<T extends { readonly id: string }>(
  id: string,
  rows: readonly TableRow[],
  { head, table, shape, before }: Reading<T>,
): TableRecord<T> | { faults: Fault[] } {
  const faults: Fault[] = [];
  const old = before === undefined ? {} : (structuredClone(before) as unknown as Part);
  const draft: Part = { ...structuredClone(old), id };
  const [first, ...others] = rows;
  const headColumns = head.filter(({ column }) => column.path !== 'id');
  apply(headColumns, first, old, draft, faults);
  for (const row of others) {
    for (const { header } of headColumns) {
      const cell = row.cells[header];
      if (cell !== '' && cell !== first.cells[header]) {
        faults.push({
          line: row.line,
          column: header,
          message: `differs from line ${first.line} of the same id`,
        });
      }
    }
  }
  const lists = shape.lists.map((list) => ({
    list,
    columns: presentColumns(list.columns, table),
    rows: [] as TableRow[],
  }));
  for (const { list, columns, rows: used } of lists) {
    if (columns.length === 0) continue;
    used.push(...rows.filter((row) => columns.some(({ header }) => row.cells[header].trim() !== '')));
    draft[list.key] = readParts(list, columns, used, old, faults);
  }
  if (faults.length > 0) return { faults };

  const parsed = shape.schema.safeParse(draft);
  if (!parsed.success) {
    const said = faultsOf(parsed.error.issues, draft);
    return {
      faults: parsed.error.issues.map(({ path }, fault) => {
        const found = lists.find(({ list, rows: used }) => list.key === path[0] && used.length > 0);
        const inList = found !== undefined && typeof path[1] === 'number';
        const columns = inList ? found.columns : head;
        const at = (inList ? path.slice(2) : path).join('.');
        const column = columns.find((one) => one.column.path === at || at.startsWith(`${one.column.path}.`));
        return {
          line: inList ? (found.rows[path[1] as number]?.line ?? first.line) : first.line,
          column: column?.header ?? (at === '' ? null : at),
          message: said[fault].what,
        };
      }),
    };
  }
  try {
    shape.judge?.(parsed.data);
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    return { faults: [{ line: first.line, column: null, message: error.message }] };
  }
  return { line: first.line, record: parsed.data };
}

/** The parts of a list, each from a row, over the part that is kept under the same name. */
function readParts(
  { key, by, numbered }: ListColumns,
  columns: readonly PresentColumn[],
  rows: readonly TableRow[],
  old: Part,
  faults: Fault[],
): Part[] {
  const kept = (valueAt(old, key) ?? []) as Part[];
  const name = columns.find(({ column }) => column.path === by);
  const given = new Set(rows.map(({ cells }) => (name ? cells[name.header].trim() : '')));
  let count = 0;
  const nextId = () => {
    do count++;
    while (given.has(`${numbered}-${count}`));
    return `${numbered}-${count}`;
  };
  return rows.map((row) => {
    const called = (name ? row.cells[name.header].trim() : '') || (numbered === null ? '' : nextId());
    const before = kept.find((part) => part[by] === called) ?? {};
    const part: Part = { ...structuredClone(before), [by]: called };
    apply(
      columns.filter(({ column }) => column.path !== by),
      row,
      before,
      part,
      faults,
    );
    return part;
  });
}

/** Puts the cells of a row into a part; a cell that says what is kept leaves that as it is, to the last digit. */
function apply(
  columns: readonly PresentColumn[],
  { line, cells }: TableRow,
  old: Part,
  part: Part,
  faults: Fault[],
): void {
  for (const { column, header, units } of columns) {
    const cell = cells[header];
    if (cell === cellOf(column, old, units)) continue;
    try {
      putAt(part, column.path, readCell(column, cell, units));
    } catch (error) {
      faults.push({ line, column: header, message: (error as Error).message });
    }
  }
}

function presentColumns(columns: readonly Column[], { headers }: ReadTable): PresentColumn[] {
  return columns.flatMap((column) =>
    (['metric', 'us'] as const)
      .map((units) => ({ column, units, header: headerOf(column, units) }))
      .filter(
        ({ header, units }) => headers.includes(header) && (units === 'metric' || header !== column.header),
      ),
  );
}

function unknownColumns<T extends { readonly id: string }>(
  { headers }: ReadTable,
  { head, lists }: TableShape<T>,
): Fault[] {
  const columns = [...head, ...lists.flatMap((list) => list.columns)];
  const known = new Set(columns.flatMap((column) => [headerOf(column, 'metric'), headerOf(column, 'us')]));
  return headers
    .filter((header) => !known.has(header))
    .map((header) => ({
      line: 1,
      column: header,
      message: `is no column of this table; it was passed over${meantAfter(header, [...known])}`,
    }));
}

/** What a column was probably meant to be, behind a message; empty where nothing is near. */
function meantAfter(header: string, known: readonly string[]): string {
  const meant = meantOf(header, known);
  return meant === null ? '' : `. ${meant}`;
}

/** The id of a row, or one made of its names. */
function idOf<T extends { readonly id: string }>(
  { cells }: TableRow,
  head: readonly PresentColumn[],
  { idFrom }: TableShape<T>,
): string {
  const cellAt = (path: string) => {
    const found = head.find(({ column }) => column.path === path);
    return found === undefined ? '' : cells[found.header].trim();
  };
  return cellAt('id') || slugOf(idFrom.map(cellAt).join(' '));
}

/** A name in small letters, digits and hyphens. */
const slugOf = (name: string): string =>
  name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replaceAll(/^-|-$/g, '');
