import type { DuckDBConnection } from '@duckdb/node-api';

/** Settles for as long as the file is open that the database reaches no other file; nothing lifts that again. */
export async function lockFields(connection: DuckDBConnection): Promise<void> {
  for (const setting of [
    "memory_limit = '256MB'",
    // A short log of changes is soon read again after a fall.
    "checkpoint_threshold = '4MB'",
    'enable_external_access = false',
    'lock_configuration = true',
  ]) {
    await connection.run(`SET ${setting}`);
  }
}
