import { catalogueFault, type TableRow } from './parseTable.ts';
import { spellingOf } from './spelling.ts';

/** Where a reference stands, for the message about it. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: string;
}

/** @throws {SourceFailedError} CATALOGUE_FAULTY where two lines, or one twice, hold the same name */
export function refuseRepeats<T>(
  file: string,
  column: string,
  rows: readonly TableRow<T>[],
  namesOf: (record: T) => readonly string[],
): void {
  const lines = new Map<string, number>();
  for (const { line, record } of rows) {
    for (const name of namesOf(record)) {
      const earlier = lines.get(spellingOf(name));
      if (earlier !== undefined) {
        throw catalogueFault(file, line, column, `"${name}" stands on line ${earlier} already`);
      }
      lines.set(spellingOf(name), line);
    }
  }
}

/** @throws {SourceFailedError} CATALOGUE_FAULTY where a name leads nowhere */
export function refuseUnknown(
  { file, line, column }: Place,
  names: readonly string[],
  known: ReadonlySet<string>,
  knownFile: string,
): void {
  const unknown = names.find((name) => !known.has(name));
  if (unknown !== undefined) throw catalogueFault(file, line, column, `"${unknown}" is not in ${knownFile}`);
}
