import { CsvError, parse } from 'csv-parse/sync';
import { InvalidInputError } from '../errors.ts';
import { BATCH_COLUMNS } from '../schema/batchColumns.ts';
import type { FieldList } from './batch.ts';

/** Most rows of one list. */
const MOST_ROWS = 200_000;

/**
 * Reads a list of fields: CSV with a head, commas, semicolons or tabs between the cells. Names of known columns may be
 * written with capitals, blanks or hyphens; all others are kept as they are.
 * @throws {InvalidInputError} FILE_UNREADABLE, BATCH_TOO_LONG
 * @example readFieldList('Field;Soil pH\nCreek;7.1\n', 'list.csv').rows[0].cells.soil_ph // '7.1'
 */
export function readFieldList(text: string, file: string): FieldList {
  const parsed = parsedRows(text, file);
  const [head = { line: 1, cells: [] }, ...rows] = parsed;
  if (rows.length > MOST_ROWS) {
    throw new InvalidInputError(
      'BATCH_TOO_LONG',
      `${file} holds ${rows.length} rows; ${MOST_ROWS} are the most.`,
      {
        hint: 'Split it into several files.',
      },
    );
  }
  const columns = head.cells.map(columnName);
  const twice = columns.find((name, index) => columns.indexOf(name) !== index);
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

interface Line {
  readonly line: number;
  readonly cells: readonly string[];
}

function parsedRows(text: string, file: string): [Line?, ...Line[]] {
  const firstLine = text.slice(0, Math.max(0, text.search(/\r|\n|$/)));
  const delimiter = [',', ';', '\t'].reduce((best, one) =>
    firstLine.split(one).length > firstLine.split(best).length ? one : best,
  );
  try {
    const rows = parse(text, {
      bom: true,
      delimiter,
      info: true,
      trim: true,
      relax_column_count_less: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return rows.map(({ record, info }) => ({ line: info.lines, cells: record })) as [Line?, ...Line[]];
  } catch (cause) {
    if (!(cause instanceof CsvError)) throw cause;
    throw new InvalidInputError('FILE_UNREADABLE', `${file} cannot be read as CSV: ${cause.message}.`, {
      hint: 'Put quotation marks around cells that hold commas; "drywake batch --template" shows the head.',
      cause,
    });
  }
}

function columnName(written: string): string {
  const plain = written
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  return BATCH_COLUMNS.some(({ name }) => name === plain) ? plain : written.trim();
}
