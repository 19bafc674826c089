import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { DrywakeError, SourceFailedError } from '../errors.ts';
import type { StationExtent, StationRecord } from '../schema/weather.ts';
import { createMergeTables, type ImportCount, mergeRecord } from './mergeRecord.ts';
import { fileVersion, migrate } from './migrate.ts';
import { type HeldFile, holdFile, type OpenMode } from './openFiles.ts';
import { readRecord, readStations } from './readRecord.ts';
import { assertNotNewer, assertNotOlder, emptyStore, readOnlyStore } from './storeRefusals.ts';
import { inTransaction, withSnapshot } from './transaction.ts';
import { MIGRATIONS, WEATHER_VERSION } from './weatherSchema.ts';

export type { ImportCount, OpenMode };

/** Name of the weather store in a data folder. */
export const WEATHER_FILE = 'weather.duckdb';

/** The stored daily records; has the shape of the app's WeatherReader and takes imports. */
export interface WeatherStore {
  stations(): Promise<readonly StationExtent[]>;
  /** @throws {MissingDataError} STATION_UNKNOWN or STORE_EMPTY */
  record(stationId: string): Promise<StationRecord>;
  /** Imports one record in one transaction; a repeat changes nothing. */
  importRecord(record: StationRecord): Promise<ImportCount>;
  /**
   * Imports several records in one transaction: all of them, or, where one fails, none.
   * @throws {ConflictError} STORE_READ_ONLY, STATION_INVENTED
   * @throws {MissingDataError} STATION_EMPTY
   * @throws {SourceFailedError} STORE_WRITE_FAILED
   */
  importRecords(records: readonly StationRecord[]): Promise<ImportCount[]>;
  /** Ends what is running and gives the file back. */
  close(): Promise<void>;
}

/**
 * Opens `weather.duckdb` in a data folder. Writing makes the folder and the file where they are not there and brings an
 * older file up to date; it needs the file for itself. Reading a folder without the file finds no stations.
 * @throws {ConflictError} STORE_BUSY, STORE_NEWER, or STORE_OLDER (reading only)
 * @throws {SourceFailedError} STORE_UNREADABLE
 */
export async function openWeatherStore(folder: string, { mode }: { mode: OpenMode }): Promise<WeatherStore> {
  const path = join(folder, WEATHER_FILE);
  if (mode === 'read' && !existsSync(path)) return storeWithoutFile();
  if (mode === 'write') makeFolder(folder);
  const file = await holdFile(path, mode);
  let writing: DuckDBConnection | null = null;
  try {
    writing = await file.instance.connect();
    await lockDown(writing);
    const version = await fileVersion(writing);
    assertNotNewer(path, version, WEATHER_VERSION);
    if (mode === 'write') {
      await migrate(writing, version, MIGRATIONS);
      await createMergeTables(writing);
      return openStore(path, file, writing);
    }
    writing.closeSync();
    if (version > 0) {
      assertNotOlder(path, version, WEATHER_VERSION);
      return openStore(path, file, null);
    }
    file.close();
    return storeWithoutFile();
  } catch (error) {
    writing?.closeSync();
    file.close();
    throw error;
  }
}

function openStore(path: string, file: HeldFile, writing: DuckDBConnection | null): WeatherStore {
  const running = new Set<Promise<unknown>>();
  const track = <T>(task: Promise<T>): Promise<T> => {
    const ended = task.catch(() => undefined).finally(() => running.delete(ended));
    running.add(ended);
    return task;
  };
  // Imports queue up: a connection holds one transaction at a time.
  let lastImport: Promise<unknown> = Promise.resolve();
  const importRecords = async (records: readonly StationRecord[]): Promise<ImportCount[]> => {
    if (writing === null) throw readOnlyStore(path);
    const task = lastImport.then(() => writeAll(path, writing, records));
    lastImport = task.catch(() => undefined);
    return track(task);
  };
  return {
    stations: () => track(withSnapshot(file.instance, readStations)),
    record: (stationId) =>
      track(withSnapshot(file.instance, (connection) => readRecord(connection, stationId))),
    importRecords,
    importRecord: async (record) => (await importRecords([record]))[0],
    async close() {
      await Promise.all(running);
      writing?.closeSync();
      file.close();
    },
  };
}

async function writeAll(
  path: string,
  writing: DuckDBConnection,
  records: readonly StationRecord[],
): Promise<ImportCount[]> {
  try {
    return await inTransaction(writing, async () => {
      const counts: ImportCount[] = [];
      for (const record of records) counts.push(await mergeRecord(writing, record));
      return counts;
    });
  } catch (error) {
    if (error instanceof DrywakeError) throw error;
    throw new SourceFailedError(
      'STORE_WRITE_FAILED',
      `The store ${path} could not be written; it is as it was before.`,
      {
        hint: 'Check the free space of the disk and that you may write the data folder, then import again.',
        details: { path },
        cause: error,
      },
    );
  }
}

/** No statement may reach other files, nor lift this again. */
async function lockDown(connection: DuckDBConnection): Promise<void> {
  const locked = await connection.runAndReadAll("SELECT current_setting('lock_configuration')");
  if (locked.getRows()[0][0] === true) return;
  await connection.run('SET enable_external_access = false');
  await connection.run('SET lock_configuration = true');
}

function storeWithoutFile(): WeatherStore {
  return {
    stations: async () => [],
    record: async (stationId) => {
      throw emptyStore(stationId);
    },
    importRecord: async () => {
      throw readOnlyStore(WEATHER_FILE);
    },
    importRecords: async () => {
      throw readOnlyStore(WEATHER_FILE);
    },
    close: async () => undefined,
  };
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (cause) {
    throw new SourceFailedError('STORE_UNREADABLE', `The data folder ${folder} cannot be made.`, {
      hint: 'Check that you may write where it is to stand, or name another folder.',
      details: { folder },
      cause,
    });
  }
}
