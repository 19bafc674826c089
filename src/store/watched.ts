import type { DuckDBConnection } from '@duckdb/node-api';
import { importStopped } from './storeRefusals.ts';

/** What may be asked of a long piece of work. */
export interface Watch {
  /** Ends the work; what it began is undone. */
  readonly signal?: AbortSignal;
  /** Told a few times a second how much of the running statement is done (0-1), where the database knows. */
  readonly onProgress?: (fractionDone: number) => void;
}

const EVERY_MS = 100;

/**
 * Runs work on a connection, tells its progress, and interrupts it when it is to stop.
 * @throws {ConflictError} IMPORT_STOPPED
 */
export async function watched<T>(
  connection: DuckDBConnection,
  { signal, onProgress }: Watch,
  work: () => Promise<T>,
): Promise<T> {
  if (signal?.aborted) throw importStopped();
  const timer = setInterval(() => {
    // Between two statements an interruption is lost, hence again and again.
    if (signal?.aborted) return connection.interrupt();
    const { percentage } = connection.progress;
    if (percentage > 0 && percentage <= 100) onProgress?.(percentage / 100);
  }, EVERY_MS);
  try {
    return await work();
  } catch (error) {
    if (signal?.aborted) throw importStopped(error);
    throw error;
  } finally {
    clearInterval(timer);
  }
}
