import type { DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';

/** Runs `work` in one transaction: all of it is kept, or, where it throws, none. */
export async function inTransaction<T>(connection: DuckDBConnection, work: () => Promise<T>): Promise<T> {
  await connection.run('BEGIN TRANSACTION');
  try {
    const result = await work();
    await commit(connection);
    return result;
  } catch (error) {
    await connection.run('ROLLBACK').catch(() => undefined);
    throw error;
  }
}

/** Commits; tidying up the file afterwards may fail on a full disk, which takes nothing back. */
async function commit(connection: DuckDBConnection): Promise<void> {
  try {
    await connection.run('COMMIT');
  } catch (error) {
    if (!(error instanceof Error && /COMMIT succeeded and is durable/.test(error.message))) throw error;
  }
}

/** Runs reads on a connection of their own, all of which see the store as it was at their start. */
export async function withSnapshot<T>(
  instance: DuckDBInstance,
  read: (connection: DuckDBConnection) => Promise<T>,
): Promise<T> {
  const connection = await instance.connect();
  try {
    return await inTransaction(connection, () => read(connection));
  } finally {
    connection.closeSync();
  }
}
