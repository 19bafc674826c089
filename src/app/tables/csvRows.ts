import { CsvError, type Options, parse } from 'csv-parse/sync';

/** Most rows of a table, its head included. */
const MOST_ROWS = 200_001;
/** Most columns of a table; none that the program takes has more than some fifty. */
const MOST_COLUMNS = 500;
/** Most letters of one row. */
const MOST_LETTERS = 1_000_000;
/** Most cells of a table. */
const MOST_CELLS = 6_000_000;

/** A row of CSV text. */
export interface CsvRow {
  /** Line on which the row begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** What is wrong with a text that is no CSV table. */
export class CsvFault extends Error {
  constructor(
    readonly line: number,
    fault: string,
  ) {
    super(fault);
  }
}

/** How a table may be written; how many cells a row has is judged against the head where `cells` says so. */
export interface CsvWriting {
  readonly delimiter?: string;
  /** Leaves out blanks around cells. */
  readonly trim?: boolean;
  readonly cells: 'any' | 'at most the head’s' | 'the head’s';
}

/**
 * Rows of a CSV text whose cells may hold line breaks in quotes; rows of nothing but empty cells are passed over. How
 * much is taken in is bounded, so that no text of the size that is accepted takes more time or memory than a table does.
 * @throws {CsvFault}
 */
export function csvRows(text: string, { delimiter = ',', trim = false, cells }: CsvWriting): CsvRow[] {
  const options: Options = {
    ...{ bom: true, info: true, skip_empty_lines: true, delimiter, trim },
    ...{ to: MOST_ROWS + 1, max_record_size: MOST_LETTERS },
    ...{ relax_column_count_less: cells !== 'the head’s', relax_column_count_more: cells === 'any' },
  };
  if (!hasFewCells(text, delimiter)) throw new CsvFault(1, `the table has more than ${MOST_CELLS} cells`);
  let parsed: { record: string[]; info: { lines: number } }[];
  try {
    parsed = parse(text, options) as never;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === 'number' ? error.lines : 1;
    if (error.code === 'CSV_MAX_RECORD_SIZE') throw new CsvFault(line, 'the row is too long');
    throw new CsvFault(line, error.message.replace(/\.$/, ''));
  }
  if (parsed.length > MOST_ROWS) {
    throw new CsvFault(MOST_ROWS, `the table has more than ${MOST_ROWS - 1} rows; split it`);
  }
  const columns = parsed[0]?.record.length ?? 0;
  if (columns > MOST_COLUMNS) {
    throw new CsvFault(1, `the table has ${columns} columns; ${MOST_COLUMNS} are the most`);
  }
  return parsed
    .map(({ record, info }) => ({
      // The reader tells the line on which a row ends.
      line: info.lines - record.join('').split('\n').length + 1,
      cells: record,
    }))
    .filter((row) => row.cells.some((cell) => cell.trim() !== ''));
}

/** Whether separators are few enough; those inside quotes count too. */
function hasFewCells(text: string, delimiter: string): boolean {
  let cells = 1;
  for (let at = text.indexOf(delimiter); at >= 0; at = text.indexOf(delimiter, at + 1)) {
    if (++cells > MOST_CELLS) return false;
  }
  return true;
}

/** The first name that stands twice; undefined where none does. */
export function repeatedName(names: readonly string[]): string | undefined {
  const seen = new Set<string>();
  return names.find((name) => {
    if (seen.has(name)) return true;
    seen.add(name);
    return false;
  });
}
