import { CsvError, parse } from 'csv-parse/sync';
import type { z } from 'zod';
import { SourceFailedError } from '../errors.ts';
import type { Column } from './columns.ts';

/** A record with the line of its file, for messages about it. */
export interface TableRow<T> {
  readonly line: number;
  readonly record: T;
}

/** Refuses a catalogue file at one place in it. */
export function catalogueFault(file: string, line: number, column: string, fault: string): SourceFailedError {
  return new SourceFailedError('CATALOGUE_FAULTY', `${file}, line ${line}, column ${column}: ${fault}.`, {
    hint: 'Mend that line; data/README.md says what each column holds.',
    details: { file, line, column },
  });
}

/**
 * Records of one CSV text, each checked against its schema.
 * Empty text cells and empty numbers become null, empty lists become [].
 * A nested object whose cells are all empty becomes null.
 * @throws {SourceFailedError} CATALOGUE_FAULTY naming file, line and column
 */
export function parseTable<T>(
  file: string,
  csv: string,
  columns: readonly Column[],
  schema: z.ZodType<T>,
): TableRow<T>[] {
  const [header, ...rows] = readRows(file, csv);
  if (header === undefined) throw catalogueFault(file, 1, columns[0].column, 'the file is empty');
  checkHeader(file, header.cells, columns);
  const steps = columns.map(({ path }) => path.split('.'));
  return rows.map(({ line, cells }) => {
    const parsed = schema.safeParse(buildRecord(cells, columns, steps));
    if (parsed.success) return { line, record: parsed.data };
    const [issue] = parsed.error.issues;
    const at = columnAt(issue.path.join('.'), columns);
    const cell = cells[columns.indexOf(at)];
    throw catalogueFault(file, line, at.column, `${issue.message} (the cell holds "${cell}")`);
  });
}

interface RawRow {
  readonly line: number;
  readonly cells: string[];
}

function readRows(file: string, csv: string): RawRow[] {
  try {
    const rows = parse(csv, { bom: true, info: true, skip_empty_lines: true, trim: true });
    return (rows as unknown as { record: string[]; info: { lines: number } }[]).map(({ record, info }) => ({
      line: info.lines,
      cells: record,
    }));
  } catch (cause) {
    const line = cause instanceof CsvError && typeof cause.lines === 'number' ? cause.lines : 1;
    const fault = cause instanceof Error ? cause.message : String(cause);
    throw catalogueFault(file, line, '(whole line)', fault);
  }
}

function checkHeader(file: string, header: string[], columns: readonly Column[]): void {
  const wrong = columns.findIndex(({ column }, i) => header[i] !== column);
  if (wrong !== -1) {
    throw catalogueFault(
      file,
      1,
      columns[wrong].column,
      `the header has "${header[wrong] ?? ''}" in its place`,
    );
  }
  if (header.length > columns.length) {
    throw catalogueFault(file, 1, header[columns.length], 'there is no such column');
  }
}

type Cell = string | number | null | string[];
type Branch = { [key: string]: Cell | Branch };

function buildRecord(
  cells: readonly string[],
  columns: readonly Column[],
  paths: readonly (readonly string[])[],
): Branch {
  const record: Branch = {};
  columns.forEach(({ kind }, i) => {
    const steps = paths[i];
    const leaf = steps[steps.length - 1];
    let branch = record;
    for (const step of steps.slice(0, -1)) {
      branch[step] ??= {};
      branch = branch[step] as Branch;
    }
    branch[leaf] = readCell(cells[i], kind);
  });
  return emptyBranchesToNull(record);
}

function readCell(cell: string, kind: Column['kind']): Cell {
  if (kind === 'list') return cell.split(';').flatMap((part) => part.trim() || []);
  if (cell === '') return null;
  return kind === 'number' ? Number(cell) : cell;
}

function emptyBranchesToNull(record: Branch): Branch {
  for (const [key, value] of Object.entries(record)) {
    if (value === null || typeof value !== 'object' || Array.isArray(value)) continue;
    emptyBranchesToNull(value);
    const empty = Object.values(value).every(
      (cell) => cell === null || (Array.isArray(cell) && cell.length === 0),
    );
    if (empty) record[key] = null;
  }
  return record;
}

/** The column that a fault in the record belongs to: the longest path that leads to it, or lies under it. */
function columnAt(path: string, columns: readonly Column[]): Column {
  const under = (inner: string, outer: string) => inner === outer || inner.startsWith(`${outer}.`);
  return (
    columns.find((column) => under(path, column.path)) ??
    columns.find((column) => under(column.path, path)) ??
    columns[0]
  );
}
