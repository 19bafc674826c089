import type { DuckDBConnection } from '@duckdb/node-api';
import { inTransaction } from './transaction.ts';
import { DAY_COLUMNS } from './weatherSchema.ts';

/** What a compaction did. */
export interface Compaction {
  /** Rows of days in the store. */
  readonly rows: number;
  /** Files whose days lay apart from their stations' other days before. */
  readonly scatteredFiles: number;
}

/** Files imported since the last compaction whose days lie apart from other days of their stations. */
export async function scatteredFiles(connection: DuckDBConnection): Promise<number> {
  const result = await connection.runAndReadAll('SELECT scattered_files FROM upkeep');
  return result.getRows()[0][0] as number;
}

/** Counts one more such file. */
export const noteScattered = async (connection: DuckDBConnection): Promise<void> => {
  await connection.run('UPDATE upkeep SET scattered_files = scattered_files + 1');
};

/**
 * Writes all days anew by station and day, so that one station's days lie together again; in one transaction, so that
 * a store whose compaction is cut off is as it was.
 */
export async function compact(connection: DuckDBConnection): Promise<Compaction> {
  const done = await inTransaction(connection, async () => {
    const scattered = await scatteredFiles(connection);
    await connection.run(
      `CREATE TABLE daily_sorted (station_key INTEGER NOT NULL, day_number INTEGER NOT NULL,
         ${DAY_COLUMNS.map((column) => `${column} INTEGER`).join(', ')})`,
    );
    await connection.run('INSERT INTO daily_sorted SELECT * FROM daily ORDER BY station_key, day_number');
    await connection.run('DROP TABLE daily');
    await connection.run('ALTER TABLE daily_sorted RENAME TO daily');
    await connection.run('UPDATE upkeep SET scattered_files = 0');
    const counted = await connection.runAndReadAll('SELECT count(*)::DOUBLE FROM daily');
    return { rows: counted.getRows()[0][0] as number, scatteredFiles: scattered };
  });
  await connection.run('CHECKPOINT');
  return done;
}
