import { join } from 'node:path';
import { DrywakeError } from '../errors.ts';
import type { FieldRecord } from '../schema/fieldRecord.ts';
import type { LabelEntry } from '../schema/labelEntry.ts';
import { copyOlder } from './copyOlder.ts';
import {
  type Everything,
  type LastAnswers,
  readEverything,
  readLastAnswers,
  writeEverything,
  writeLastAnswers,
} from './everything.ts';
import { FIELDS_MIGRATIONS, FIELDS_VERSION } from './fieldsSchema.ts';
import { createHeldConnection, type HeldConnection } from './heldConnection.ts';
import { lockFields } from './lockFields.ts';
import { makeFolder } from './makeFolder.ts';
import { fileVersion, migrate } from './migrate.ts';
import { type FileHints, type HeldFile, holdFile } from './openFiles.ts';
import { createShelf, type Shelf } from './shelf.ts';
import { FIELDS, LABELS } from './shelfKinds.ts';
import { assertNotNewer, writeFailed } from './storeRefusals.ts';
import { inTransaction } from './transaction.ts';
import { createTurns } from './turns.ts';
import { waitForFile } from './waitForFile.ts';

/** Name of the store of fields in a data folder. */
export const FIELDS_FILE = 'fields.duckdb';

const HINTS: FileHints = {
  busyHere: 'Wait until the running request has ended, then try again.',
  busyElsewhere:
    'A server probably runs on this data folder: ask that one, stop it, or name another folder with DRYWAKE_HOME.',
  damaged:
    'Check that you may read and write the data folder; a damaged file can be moved away and the last backup restored.',
};

/** Fields, label entries and last answers, held by one process. */
export interface FieldsStore {
  readonly fields: Shelf<FieldRecord>;
  readonly labels: Shelf<LabelEntry>;
  /** What each planned crop was last told. */
  lastAnswers(): Promise<LastAnswers>;
  keepAnswers(answers: LastAnswers): Promise<void>;
  /** All of it, every version. */
  everything(): Promise<Everything>;
  /** Puts all of that in the place of all that is kept, or, where it fails, nothing. */
  replaceEverything(all: Everything): Promise<void>;
  /** Ends what is running and gives the file back. */
  close(): Promise<void>;
}

export interface FieldsOptions {
  /** The time, as an ISO text; versions are marked with it. */
  now(): string;
  /** How long to wait for somebody else who holds the file; 0 where not given. [ms] */
  readonly waitMs?: number;
}

/**
 * Opens `fields.duckdb` in a data folder, alone; makes both where they are not there. An older file is copied to
 * `fields.version-N.duckdb` and brought up to date.
 * @throws {ConflictError} STORE_BUSY, STORE_NEWER
 * @throws {SourceFailedError} STORE_UNREADABLE
 */
export async function openFieldsStore(
  folder: string,
  { now, waitMs = 0 }: FieldsOptions,
): Promise<FieldsStore> {
  makeFolder(folder);
  const path = join(folder, FIELDS_FILE);
  const hold = () => waitForFile(waitMs, () => holdFile(path, 'write', HINTS));
  let file = await hold();
  try {
    const version = await usable(path, file);
    if (version > 0 && version < FIELDS_VERSION) {
      // Closing writes all of it into the one file, which can then be copied whole.
      file.close();
      copyOlder(path, version);
      file = await hold();
    }
    const connection = await file.instance.connect();
    await lockFields(connection);
    await migrate(connection, version, FIELDS_MIGRATIONS);
    return storeOver(createHeldConnection(path, hold, { file, connection }), now);
  } catch (error) {
    file.close();
    throw error instanceof DrywakeError ? error : writeFailed(path, error);
  }
}

/** Version of a file that this program may use. */
async function usable(path: string, { instance }: HeldFile): Promise<number> {
  const connection = await instance.connect();
  try {
    const version = await fileVersion(connection);
    assertNotNewer(path, version, FIELDS_VERSION);
    return version;
  } finally {
    connection.closeSync();
  }
}

function storeOver(held: HeldConnection, now: () => string): FieldsStore {
  const { take: turn, ended } = createTurns();
  const { connection } = held;
  const take = <T>(work: () => Promise<T>) => turn(() => held.use(work));
  const access = { connection, take, now };
  const change = (work: () => Promise<void>) => take(() => inTransaction(connection(), work));
  return {
    fields: createShelf(FIELDS, access),
    labels: createShelf(LABELS, access),
    lastAnswers: () => take(() => readLastAnswers(connection())),
    keepAnswers: (answers) => change(() => writeLastAnswers(connection(), answers)),
    everything: () => take(() => readEverything(connection())),
    replaceEverything: (all) => change(() => writeEverything(connection(), all)),
    async close() {
      await ended();
      held.close();
    },
  };
}
