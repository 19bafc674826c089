import type { DuckDBConnection } from '@duckdb/node-api';
import { inTransaction } from './transaction.ts';

/** Version of the open file; 0 where nothing has been built in it yet. */
export async function fileVersion(connection: DuckDBConnection): Promise<number> {
  const tables = await connection.runAndReadAll(
    "SELECT 1 FROM duckdb_tables() WHERE table_name = 'schema_version' AND NOT temporary",
  );
  if (tables.currentRowCount === 0) return 0;
  const versions = await connection.runAndReadAll(
    'SELECT coalesce(max(version), 0)::INTEGER FROM schema_version',
  );
  return versions.getRows()[0][0] as number;
}

/** Brings a file up to the newest version, each step in a transaction of its own. */
export async function migrate(
  connection: DuckDBConnection,
  version: number,
  migrations: readonly (readonly string[])[],
): Promise<void> {
  await connection.run('CREATE TABLE IF NOT EXISTS schema_version (version INTEGER NOT NULL)');
  for (let step = version; step < migrations.length; step++) {
    await inTransaction(connection, async () => {
      for (const statement of migrations[step]) await connection.run(statement);
      await connection.run('DELETE FROM schema_version');
      await connection.run('INSERT INTO schema_version VALUES ($1)', [step + 1]);
    });
  }
}
