import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { BIGINT, type DuckDBConnection, VARCHAR } from '@duckdb/node-api';

/** What tells one state of a file from another. */
export interface FileStamp {
  readonly name: string;
  readonly bytes: number;
  readonly modifiedMs: number;
}

const TYPES = [VARCHAR, BIGINT, BIGINT];

/** The stamp of a file; null where it cannot be looked at. */
export async function stampOf(path: string): Promise<FileStamp | null> {
  try {
    const { size, mtimeMs } = await stat(path);
    return { name: basename(path), bytes: size, modifiedMs: Math.trunc(mtimeMs) };
  } catch {
    return null;
  }
}

const valuesOf = ({ name, bytes, modifiedMs }: FileStamp) => [name, BigInt(bytes), BigInt(modifiedMs)];

/** Whether a file in just this state was imported whole. */
export async function holdsFile(connection: DuckDBConnection, stamp: FileStamp): Promise<boolean> {
  const found = await connection.runAndReadAll(
    'SELECT 1 FROM imported_file WHERE name = $1 AND bytes = $2 AND modified_ms = $3',
    valuesOf(stamp),
    TYPES,
  );
  return found.currentRowCount > 0;
}

/** Notes a file as imported, in the transaction that imports it. */
export async function noteFile(connection: DuckDBConnection, stamp: FileStamp): Promise<void> {
  await connection.run('DELETE FROM imported_file WHERE name = $1', [stamp.name]);
  await connection.run('INSERT INTO imported_file VALUES ($1, $2, $3)', valuesOf(stamp), TYPES);
}
