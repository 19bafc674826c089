import { CsvError, parse } from 'csv-parse/sync';
import { InvalidInputError } from '../../errors.ts';
import { unguardCell } from './cells.ts';

/** A line of a table, its cells by the names of the columns in small letters. */
export interface TableRow {
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
}

/** A table as text, taken apart. */
export interface ReadTable {
  readonly headers: readonly string[];
  readonly rows: readonly TableRow[];
}

/**
 * Takes a CSV text apart: a head, then a row a line; cells may hold line breaks in quotes.
 * @throws {InvalidInputError} TABLE_UNREADABLE naming the line
 */
export function readCells(text: string): ReadTable {
  const [head, ...rows] = linesOf(text);
  if (head === undefined) throw unreadable(1, 'the table is empty');
  const headers = head.cells.map((cell) => cell.trim().toLowerCase());
  const twice = headers.find((name, index) => name !== '' && headers.indexOf(name) !== index);
  if (twice !== undefined) throw unreadable(head.line, `two columns are headed "${twice}"`);
  return {
    headers: headers.filter((name) => name !== ''),
    rows: rows.map(({ line, cells }) => ({
      line,
      cells: Object.fromEntries(headers.map((name, index) => [name, unguardCell(cells[index] ?? '')])),
    })),
  };
}

function linesOf(text: string): { line: number; cells: string[] }[] {
  try {
    const rows = parse(text, {
      ...{ bom: true, info: true, skip_empty_lines: true, relax_column_count: true },
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return rows
      .map(({ record, info }) => ({
        // The reader tells the line on which a row ends.
        line: info.lines - record.join('').split('\n').length + 1,
        cells: record,
      }))
      .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw unreadable(typeof error.lines === 'number' ? error.lines : 1, error.message.replace(/\.$/, ''));
  }
}

export const unreadable = (line: number, fault: string): InvalidInputError =>
  new InvalidInputError('TABLE_UNREADABLE', `The table, line ${line}: ${fault}.`, {
    hint: 'Export a table first: it shows every column. Nothing was changed.',
    details: { line },
  });
