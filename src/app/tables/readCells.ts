import { InvalidInputError } from '../../errors.ts';
import { unguardCell } from './cells.ts';
import { CsvFault, type CsvRow, csvRows, repeatedName } from './csvRows.ts';

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
  const twice = repeatedName(headers.filter((name) => name !== ''));
  if (twice !== undefined) throw unreadable(head.line, `two columns are headed "${twice}"`);
  return {
    headers: headers.filter((name) => name !== ''),
    rows: rows.map(({ line, cells }) => ({
      line,
      cells: Object.fromEntries(headers.map((name, index) => [name, unguardCell(cells[index] ?? '')])),
    })),
  };
}

function linesOf(text: string): CsvRow[] {
  try {
    return csvRows(text, { cells: 'any' });
  } catch (error) {
    if (!(error instanceof CsvFault)) throw error;
    throw unreadable(error.line, error.message);
  }
}

export const unreadable = (line: number, fault: string): InvalidInputError =>
  new InvalidInputError('TABLE_UNREADABLE', `The table, line ${line}: ${fault}.`, {
    hint: 'Export a table first: it shows every column. Nothing was changed.',
    details: { line },
  });
