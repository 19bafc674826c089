import type { z } from 'zod';
import type { Column } from './column.ts';

/** Rows of a record that are a list in it: its treatments, its plans, its intervals. */
export interface ListColumns {
  /** Key of the list in the record. */
  readonly key: string;
  /** Path inside a part that tells it from the others. */
  readonly by: string;
  /** What ids begin with that the table does not give; null where parts have none. */
  readonly numbered: string | null;
  readonly columns: readonly Column[];
}

/** How records of one kind stand in a table: one record on one row or more, which share its id. */
export interface TableShape<T extends { readonly id: string }> {
  readonly head: readonly Column[];
  readonly lists: readonly ListColumns[];
  readonly schema: z.ZodType<T>;
  /** Texts that make an id where the table gives none. */
  readonly idFrom: readonly string[];
  /** Judges a record beyond its shape. */
  judge?(record: T): void;
}
