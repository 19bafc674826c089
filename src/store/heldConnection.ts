import type { DuckDBConnection } from '@duckdb/node-api';
import { lockFields } from './lockFields.ts';
import type { HeldFile } from './openFiles.ts';
import { writeFailed } from './storeRefusals.ts';

/** An open file with the one connection to it. */
interface Open {
  readonly file: HeldFile;
  readonly connection: DuckDBConnection;
}

/** A connection that is made anew where the database gave up on its file. */
export interface HeldConnection {
  connection(): DuckDBConnection;
  /**
   * Does work on it.
   * @throws {SourceFailedError} STORE_WRITE_FAILED where the disk, not the work, was at fault
   */
  use<T>(work: () => Promise<T>): Promise<T>;
  close(): void;
}

/** The database closes itself to everything once it could not tidy up its file, as on a full disk, until opened anew. */
const GAVE_UP = /database has been invalidated/;
/** Failures of the disk or of the database itself, by its words for them. */
const OF_THE_STORE = /^(FATAL|INTERNAL|IO|TransactionContext|Out of Memory) Error/;

const isAbout = (error: unknown, words: RegExp): boolean =>
  error instanceof Error && words.test(error.message);

/**
 * A connection that recovers by itself: one change may fail where the disk is full, the next one finds the file open.
 * @param hold opens the file
 */
export function createHeldConnection(
  path: string,
  hold: () => Promise<HeldFile>,
  open: Open,
): HeldConnection {
  let held = open;
  let isOpen = true;
  const close = () => {
    if (!isOpen) return;
    isOpen = false;
    held.connection.closeSync();
    held.file.close();
  };
  const reopen = async () => {
    close();
    const file = await hold();
    const connection = await file.instance.connect();
    await lockFields(connection);
    held = { file, connection };
    isOpen = true;
  };
  return {
    connection: () => held.connection,
    async use(work) {
      if (!isOpen) await reopen();
      const attempt = async () => {
        try {
          return await work();
        } catch (error) {
          if (!isAbout(error, GAVE_UP)) throw error;
          // Nothing of the work was done: it met a database that had given up before.
          await reopen();
          return work();
        }
      };
      return attempt().catch((error: unknown) => {
        throw isAbout(error, OF_THE_STORE) ? writeFailed(path, error) : error;
      });
    },
    close,
  };
}
