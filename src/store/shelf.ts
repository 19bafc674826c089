import type { DuckDBConnection } from '@duckdb/node-api';
import type { z } from 'zod';
import type { Removed } from '../schema/recordId.ts';
import {
  nothingToUndo,
  recordChanged,
  recordDamaged,
  recordExists,
  recordUnknown,
  type ShelfWords,
} from './shelfRefusals.ts';
import { inTransaction } from './transaction.ts';

/** A record as it is kept. */
export interface Kept<T> {
  readonly version: number;
  readonly record: T;
  /** Whether there is a version before this one. */
  readonly canUndo: boolean;
  /** True where this version is a removal. */
  readonly removed: boolean;
}

/** Records that are kept with all their versions; each change makes one. */
export interface Shelf<T> {
  list(): Promise<{ readonly kept: readonly Kept<T>[]; readonly removed: readonly Removed[] }>;
  /** How many records there are without those that were removed; none of them is read. */
  count(): Promise<number>;
  /** The record of that id; null where there is none or it was removed. */
  get(id: string): Promise<Kept<T> | null>;
  /**
   * Keeps a record; one that is kept already just so makes no version.
   * @param version the version that it takes the place of; null for a new one
   * @throws {ConflictError} …_CHANGED where another version is kept by now, …_EXISTS
   * @throws {MissingDataError} …_UNKNOWN
   */
  put(record: T, version: number | null): Promise<Kept<T>>;
  /** @throws {ConflictError} …_CHANGED @throws {MissingDataError} …_UNKNOWN */
  remove(id: string, version: number): Promise<Removed>;
  /**
   * Makes the version before the given one the present one, as a new version; a second time takes that back.
   * @throws {ConflictError} …_CHANGED, …_FIRST @throws {MissingDataError} …_UNKNOWN
   */
  undo(id: string, version: number): Promise<Kept<T>>;
}

/** What is particular to the records of a shelf. */
export interface ShelfKind<T extends { readonly id: string }> extends ShelfWords {
  readonly table: 'field' | 'label';
  /** Key of the record in what conflicts tell. */
  readonly key: 'record' | 'entry';
  readonly schema: z.ZodType<T>;
  nameOf(record: T): string;
}

/** A version of a record as the tables hold it. */
interface Row<T> {
  readonly version: number;
  readonly document: string;
  readonly removed: boolean;
  readonly record: T;
}

/** What a shelf writes and reads through. */
export interface ShelfAccess {
  /** The open connection; another one where the file had to be opened anew. */
  connection(): DuckDBConnection;
  /** Runs one piece of work at a time. */
  take<T>(work: () => Promise<T>): Promise<T>;
  /** The time, as an ISO text. */
  now(): string;
}

/** The records of one kind over an open store. */
export function createShelf<T extends { readonly id: string }>(
  kind: ShelfKind<T>,
  { connection, take, now }: ShelfAccess,
): Shelf<T> {
  const { table } = kind;

  const rowOf = ([id, version, document, removed]: readonly unknown[]): Row<T> => ({
    version: version as number,
    document: document as string,
    removed: removed as boolean,
    record: readDocument(kind, id as string, document as string),
  });

  async function present(id: string): Promise<Row<T> | null> {
    const found = await connection().runAndReadAll(
      `SELECT id, version, document, removed FROM ${table} WHERE id = $1`,
      [id],
    );
    return found.currentRowCount === 0 ? null : rowOf(found.getRows()[0]);
  }

  /** The present row, which must be of that version. */
  async function presentOf(id: string, version: number): Promise<Row<T>> {
    const row = await present(id);
    if (row === null) throw recordUnknown(kind, id, false);
    if (row.version !== version) {
      throw recordChanged(kind, kind.nameOf(row.record), { given: version, ...row }, told(row));
    }
    return row;
  }

  const keptOf = ({ version, record, removed }: Row<T>): Kept<T> => ({
    version,
    record,
    canUndo: version > 1,
    removed,
  });
  const told = (row: Row<T>) => {
    const { record, ...rest } = keptOf(row);
    return { ...rest, [kind.key]: record };
  };

  async function keep(id: string, before: number, next: Omit<Row<T>, 'version'>): Promise<Kept<T>> {
    const row = { ...next, version: before + 1 };
    const values = [id, row.version, row.document, row.removed];
    await connection().run(
      before === 0
        ? `INSERT INTO ${table} VALUES ($1, $2, $3, $4)`
        : `UPDATE ${table} SET version = $2, document = $3, removed = $4 WHERE id = $1`,
      values,
    );
    await connection().run(`INSERT INTO ${table}_history VALUES ($1, $2, $3, $4, $5)`, [...values, now()]);
    return keptOf(row);
  }

  const change = <R>(work: () => Promise<R>) => take(() => inTransaction(connection(), work));

  return {
    list: () =>
      take(async () => {
        const found = await connection().runAndReadAll(
          `SELECT id, version, document, removed FROM ${table} ORDER BY id`,
        );
        const rows = found.getRows().map(rowOf);
        return {
          kept: rows.filter(({ removed }) => !removed).map(keptOf),
          removed: rows
            .filter(({ removed }) => removed)
            .map(({ record, version }) => ({ id: record.id, name: kind.nameOf(record), version })),
        };
      }),
    count: () =>
      take(async () => {
        const found = await connection().runAndReadAll(
          `SELECT count(*)::INTEGER FROM ${table} WHERE NOT removed`,
        );
        return found.getRows()[0][0] as number;
      }),
    get: (id) =>
      take(async () => {
        const row = await present(id);
        return row === null || row.removed ? null : keptOf(row);
      }),
    put: (given, version) =>
      change(async () => {
        const record = kind.schema.parse(given);
        const { id } = record;
        const document = JSON.stringify(record);
        const row = version === null ? await present(id) : await presentOf(id, version);
        if (version === null && row !== null && !row.removed) {
          throw recordExists(kind, id, row.version, told(row));
        }
        if (row !== null && !row.removed && row.document === document) return keptOf(row);
        return keep(id, row?.version ?? 0, { record, document, removed: false });
      }),
    remove: (id, version) =>
      change(async () => {
        const row = await presentOf(id, version);
        if (row.removed) throw recordUnknown(kind, id, true);
        const gone = await keep(id, version, { ...row, removed: true });
        return { id, name: kind.nameOf(row.record), version: gone.version };
      }),
    undo: (id, version) =>
      change(async () => {
        const row = await presentOf(id, version);
        if (version === 1) throw nothingToUndo(kind, kind.nameOf(row.record));
        const before = await connection().runAndReadAll(
          `SELECT id, version, document, removed FROM ${table}_history WHERE id = $1 AND version = $2`,
          [id, version - 1],
        );
        if (before.currentRowCount === 0) throw nothingToUndo(kind, kind.nameOf(row.record));
        return keep(id, version, rowOf(before.getRows()[0]));
      }),
  };
}

/** A kept text as a record of its schema. */
export function readDocument<T>(kind: ShelfWords & { schema: z.ZodType<T> }, id: string, text: string): T {
  try {
    return kind.schema.parse(JSON.parse(text));
  } catch (cause) {
    throw recordDamaged(kind, id, cause);
  }
}
