import { InvalidInputError } from '../errors.ts';
import { BATCH_COLUMNS } from '../schema/batchColumns.ts';
import type { FieldList } from './askedRows.ts';
import { CsvFault, type CsvRow, csvRows, repeatedName } from './tables/csvRows.ts';

/** Letters by which the separator is told. */
const MOST_HEAD = 10_000;

/**
 * Reads a list of fields: CSV with a head, commas, semicolons or tabs between the cells. Names of known columns may be
 * written with capitals, blanks or hyphens; all others are kept as they are.
 * @throws {InvalidInputError} FILE_UNREADABLE
 * @example readFieldList('Field;Soil pH\nCreek;7.1\n', 'list.csv').rows[0].cells.soil_ph // '7.1'
 */
export function readFieldList(text: string, file: string): FieldList {
  const [head = { line: 1, cells: [] }, ...rows] = rowsOf(text, file);
  const columns = head.cells.map(columnName);
  const twice = repeatedName(columns);
  if (twice !== undefined) {
    throw new InvalidInputError('FILE_UNREADABLE', `${file} has two columns named "${twice}".`, {
      hint: 'Give each column a name of its own.',
    });
  }
  return {
    file,
    columns,
    rows: rows.map(({ line, cells }) => ({
      line,
      cells: Object.fromEntries(columns.map((name, index) => [name, cells[index] ?? ''])),
    })),
  };
}

/**
 * The head of a list with one invented row, to start from.
 * @example fieldListTemplate().split(',')[0] // 'field'
 */
export const fieldListTemplate = (): string => {
  const line = (cells: string[]) => `${cells.join(',')}\n`;
  return line(BATCH_COLUMNS.map(({ name }) => name)) + line(BATCH_COLUMNS.map(({ sample }) => sample));
};

function rowsOf(text: string, file: string): CsvRow[] {
  const head = text.slice(0, MOST_HEAD);
  const firstLine = head.slice(0, head.search(/\r|\n|$/));
  const delimiter = [',', ';', '\t'].reduce((best, one) =>
    firstLine.split(one).length > firstLine.split(best).length ? one : best,
  );
  try {
    return csvRows(text, { delimiter, trim: true, cells: 'at most the head’s' });
  } catch (cause) {
    if (!(cause instanceof CsvFault)) throw cause;
    throw new InvalidInputError(
      'FILE_UNREADABLE',
      `${file}, line ${cause.line}, cannot be read as CSV: ${cause.message}.`,
      {
        hint: 'Put quotation marks around cells that hold commas; "drywake batch --template" shows the head.',
        cause,
      },
    );
  }
}

function columnName(written: string): string {
  const plain = written
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  return BATCH_COLUMNS.some(({ name }) => name === plain) ? plain : written.trim();
}
