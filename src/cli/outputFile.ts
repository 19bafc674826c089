import { csvOf, type FlatColumn } from '../app/flatTable.ts';
import { InvalidInputError } from '../errors.ts';
import type { CliDeps } from './command.ts';

/** A table to be written in one of several forms. */
export interface OutputTable<Row> {
  readonly columns: readonly FlatColumn<Row>[];
  readonly rows: readonly Row[];
  /** The forms that are not tables, by the ending of the file's name. */
  readonly others: Readonly<Record<string, () => unknown>>;
}

/**
 * Writes a table into a file; the ending of its name says how: .csv, .parquet, or one of the table's other forms.
 * @throws {InvalidInputError} OUTPUT_ENDING
 * @throws {SourceFailedError} FILE_NOT_WRITTEN
 */
export async function writeOutput<Row>(path: string, table: OutputTable<Row>, deps: CliDeps): Promise<void> {
  const { columns, rows, others } = table;
  const ending = endingOf(path);
  if (ending === 'csv') return deps.writeText(path, csvOf(columns, rows));
  if (ending === 'parquet') return deps.writeParquet(path, columns, cellsOf(columns, rows));
  return deps.writeText(path, `${JSON.stringify(others[ending]())}\n`);
}

/** Refuses a name whose ending says nothing, before any work is done. @throws {InvalidInputError} OUTPUT_ENDING */
export function checkOutput(path: string, others: readonly string[]): void {
  const endings = ['csv', 'parquet', ...others];
  if (endings.includes(endingOf(path))) return;
  throw new InvalidInputError('OUTPUT_ENDING', `The name ${path} does not say what to write.`, {
    hint: `End it with ${endings.map((ending) => `.${ending}`).join(', ')}.`,
    details: { field: 'out' },
  });
}

const endingOf = (path: string): string => /\.([A-Za-z]+)$/.exec(path)?.[1].toLowerCase() ?? '';

function* cellsOf<Row>(
  columns: readonly FlatColumn<Row>[],
  rows: readonly Row[],
): Iterable<readonly unknown[]> {
  for (const row of rows) yield columns.map(({ cell }) => cell(row));
}
