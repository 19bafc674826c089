import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { DrywakeError } from '../errors.ts';
import type { StationExtent, StationRecord } from '../schema/weather.ts';
import { copyOlder } from './copyOlder.ts';
import type { FileImport } from './importFile.ts';
import { clearSpill, lockDown } from './lockDown.ts';
import { makeFolder } from './makeFolder.ts';
import { createMergeTables, type ImportCount } from './mergeRecord.ts';
import { fileVersion, migrate } from './migrate.ts';
import { type HeldFile, holdFile, type OpenMode } from './openFiles.ts';
import { readRecord, readStations } from './readRecord.ts';
import { readRecords } from './readRecords.ts';
import { assertNotNewer, emptyStore, olderStore, readOnlyStore, writeFailed } from './storeRefusals.ts';
import { createWriter, type StoreWriter } from './storeWriter.ts';
import { withSnapshot } from './transaction.ts';
import { waitForFile } from './waitForFile.ts';
import { MIGRATIONS, WEATHER_VERSION } from './weatherSchema.ts';

export type { FileImport, ImportCount, OpenMode };

/** Name of the weather store in a data folder. */
export const WEATHER_FILE = 'weather.duckdb';

/** The stored daily records; has the shape of the app's WeatherReader and takes imports. */
export interface WeatherStore extends StoreWriter {
  stations(): Promise<readonly StationExtent[]>;
  /** @throws {MissingDataError} STATION_UNKNOWN or STORE_EMPTY */
  record(stationId: string): Promise<StationRecord>;
  /** Several stations' records by one pass, in the order asked for. @throws as record */
  records(stationIds: readonly string[]): Promise<StationRecord[]>;
  /** Imports one record in one transaction; a repeat changes nothing. */
  importRecord(record: StationRecord): Promise<ImportCount>;
  /** Ends what is running and gives the file back. */
  close(): Promise<void>;
}

/** How a store is opened. */
export interface OpenOptions {
  readonly mode: OpenMode;
  /** Files that the database itself may read while the store is open, to import them. */
  readonly files?: readonly string[];
  /** How long to wait for somebody else who holds the file; 0 where not given. [ms] */
  readonly waitMs?: number;
}

/**
 * Opens `weather.duckdb` in a data folder. Writing makes the folder and the file where they are not there and needs the
 * file for itself. An older file is copied to `weather.version-N.duckdb` and brought up to date, by reading too where
 * nobody else holds it. Reading a folder without the file finds no stations.
 * @throws {ConflictError} STORE_BUSY, STORE_NEWER, or STORE_OLDER (reading what cannot be brought up to date)
 * @throws {SourceFailedError} STORE_UNREADABLE, STORE_NOT_COPIED
 */
export async function openWeatherStore(folder: string, options: OpenOptions): Promise<WeatherStore> {
  if (options.mode === 'write') return openToWrite(folder, options);
  const path = join(folder, WEATHER_FILE);
  if (!existsSync(path)) return storeWithoutFile();
  const store = await openToRead(folder, options);
  if (store !== 'older') return store;
  await (await openToWrite(folder, options).catch(cannotUpdate(path))).close();
  const updated = await openToRead(folder, options);
  return updated === 'older' ? cannotUpdate(path)() : updated;
}

/** Where an older file can only be read, it is left to a program that may write it. */
const cannotUpdate =
  (path: string) =>
  (cause?: unknown): never => {
    if (cause instanceof DrywakeError && cause.code === 'STORE_BUSY') throw cause;
    throw olderStore(path, WEATHER_VERSION, cause);
  };

async function openToRead(
  folder: string,
  { files = [], waitMs = 0 }: OpenOptions,
): Promise<WeatherStore | 'older'> {
  const path = join(folder, WEATHER_FILE);
  const file = await waitForFile(waitMs, () => holdFile(path, 'read'));
  try {
    const connection = await lockedConnection(file, folder, files);
    const version = await fileVersion(connection);
    connection.closeSync();
    assertNotNewer(path, version, WEATHER_VERSION);
    if (version === WEATHER_VERSION) return openStore(path, file, null);
    file.close();
    return version === 0 ? storeWithoutFile() : 'older';
  } catch (error) {
    file.close();
    throw error;
  }
}

async function lockedConnection(
  { instance }: HeldFile,
  folder: string,
  files: readonly string[],
): Promise<DuckDBConnection> {
  const connection = await instance.connect();
  const paths = files.map((given) => resolve(given));
  await lockDown(connection, resolve(folder), paths);
  return connection;
}

async function openToWrite(folder: string, { files = [], waitMs = 0 }: OpenOptions): Promise<WeatherStore> {
  const path = join(folder, WEATHER_FILE);
  makeFolder(folder);
  const hold = () => waitForFile(waitMs, () => holdFile(path, 'write'));
  let file = await hold();
  try {
    clearSpill(folder);
    let writing = await lockedConnection(file, folder, files);
    const version = await fileVersion(writing);
    assertNotNewer(path, version, WEATHER_VERSION);
    if (version > 0 && version < WEATHER_VERSION) {
      // Closing writes all of it into the one file, which can then be copied whole.
      writing.closeSync();
      file.close();
      copyOlder(path, version);
      file = await hold();
      writing = await lockedConnection(file, folder, files);
    }
    await migrate(writing, version, MIGRATIONS);
    await createMergeTables(writing);
    return openStore(path, file, writing);
  } catch (error) {
    file.close();
    throw error instanceof DrywakeError ? error : writeFailed(path, error);
  }
}

function openStore(path: string, file: HeldFile, writing: DuckDBConnection | null): WeatherStore {
  const running = new Set<Promise<unknown>>();
  const track = <T>(task: Promise<T>): Promise<T> => {
    const ended = task.catch(() => undefined).finally(() => running.delete(ended));
    running.add(ended);
    return task;
  };
  const writer = writing === null ? refusingWriter(path) : createWriter(path, writing, track);
  return {
    ...writer,
    stations: () => track(withSnapshot(file.instance, readStations)),
    record: (stationId) =>
      track(withSnapshot(file.instance, (connection) => readRecord(connection, stationId))),
    records: (stationIds) =>
      track(withSnapshot(file.instance, (connection) => readRecords(connection, stationIds))),
    importRecord: async (record) => (await writer.importRecords([record]))[0],
    async close() {
      await Promise.all(running);
      writing?.closeSync();
      file.close();
    },
  };
}

function refusingWriter(path: string): StoreWriter {
  const refuse = async () => {
    throw readOnlyStore(path);
  };
  return {
    importRecords: refuse,
    importFile: refuse,
    holds: refuse,
    scatteredFiles: refuse,
    compact: refuse,
  };
}

function storeWithoutFile(): WeatherStore {
  const writer = refusingWriter(WEATHER_FILE);
  return {
    ...writer,
    stations: async () => [],
    record: async (stationId) => {
      throw emptyStore(stationId);
    },
    records: async ([stationId]) => {
      throw emptyStore(stationId);
    },
    importRecord: async (record) => (await writer.importRecords([record]))[0],
    close: async () => undefined,
  };
}
