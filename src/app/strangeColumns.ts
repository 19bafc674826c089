import { BATCH_COLUMNS } from '../schema/batchColumns.ts';
import { meantOf } from './meant.ts';

const NAMES = BATCH_COLUMNS.map(({ name }) => name);

/** Columns of a list of fields that mean nothing here; they are kept as they are. */
export const strangeColumns = (columns: readonly string[]): string[] =>
  columns.filter((name) => !NAMES.includes(name));

/** A sentence for each of them that is spelled much like a column which the list lacks: its cells were not read. */
export const misspeltColumns = (columns: readonly string[]): string[] =>
  strangeColumns(columns).flatMap((name) => {
    const meant = meantOf(
      name,
      NAMES.filter((known) => !columns.includes(known)),
    );
    return meant === null ? [] : [`The column "${name}" means nothing here, so it was not read. ${meant}`];
  });
