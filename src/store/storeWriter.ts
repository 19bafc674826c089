import { resolve } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { DrywakeError } from '../errors.ts';
import type { StationRecord } from '../schema/weather.ts';
import { bulkLayoutOf } from './bulkLayout.ts';
import { type Compaction, compact, scatteredFiles } from './compact.ts';
import { holdsFile, noteFile, stampOf } from './importedFiles.ts';
import { type FileImport, importFile } from './importFile.ts';
import { type ImportCount, mergeRecord } from './mergeRecord.ts';
import type { DescribeStations } from './stationRows.ts';
import { writeFailed } from './storeRefusals.ts';
import { inTransaction } from './transaction.ts';
import { type Watch, watched } from './watched.ts';

/** More about an import of records. */
export interface RecordsOptions extends Watch {
  /** The file that the records are the whole of, so that it can be told as imported later. */
  readonly file?: string;
}

/** More about an import of a file. */
export interface FileOptions extends Watch {
  /** Names and positions of stations; none where not given. */
  readonly describe?: DescribeStations;
}

/** The writing half of a store. Work queues up: a connection holds one transaction at a time. */
export interface StoreWriter {
  /**
   * Imports several records in one transaction: all of them, or, where one fails, none.
   * @throws {ConflictError} STORE_READ_ONLY, STATION_INVENTED, IMPORT_STOPPED
   * @throws {MissingDataError} STATION_EMPTY
   * @throws {SourceFailedError} STORE_WRITE_FAILED
   */
  importRecords(records: readonly StationRecord[], options?: RecordsOptions): Promise<ImportCount[]>;
  /**
   * Imports a by-station or by-year file of eight fields whole, by the database alone and in one transaction. A file of
   * another layout, or with anything in it that the record readers have to judge, changes nothing and is said so.
   * @throws as importRecords
   */
  importFile(path: string, options?: FileOptions): Promise<FileImport>;
  /** Whether a file, unchanged since, was imported whole. */
  holds(path: string): Promise<boolean>;
  /** Files imported since the last compaction whose days lie apart from other days of their stations. */
  scatteredFiles(): Promise<number>;
  /**
   * Writes all days anew so that one station's lie together; stopped or failed, the store is as it was.
   * @throws {ConflictError} STORE_READ_ONLY, IMPORT_STOPPED
   * @throws {SourceFailedError} STORE_WRITE_FAILED
   */
  compact(options?: Watch): Promise<Compaction>;
}

/** A writer over the store's one writing connection. */
export function createWriter(
  path: string,
  connection: DuckDBConnection,
  track: <T>(task: Promise<T>) => Promise<T>,
): StoreWriter {
  let last: Promise<unknown> = Promise.resolve();
  const queue = <T>(watch: Watch, work: () => Promise<T>): Promise<T> => {
    const task = last
      .then(() => watched(connection, watch, work))
      .catch((error) => {
        throw error instanceof DrywakeError ? error : writeFailed(path, error);
      });
    last = task.catch(() => undefined);
    return track(task);
  };
  return {
    importRecords: (records, { file, ...watch } = {}) =>
      queue(watch, () =>
        inTransaction(connection, async () => {
          const counts: ImportCount[] = [];
          for (const record of records) counts.push(await mergeRecord(connection, record));
          const stamp = file === undefined ? null : await stampOf(file);
          if (stamp !== null) await noteFile(connection, stamp);
          return counts;
        }),
      ),
    importFile: (given, { describe = async () => new Map(), ...watch } = {}) =>
      queue(watch, async () => {
        const file = resolve(given);
        const layout = await bulkLayoutOf(file);
        const stamp = await stampOf(file);
        if (layout === null || stamp === null) return { outcome: 'left-to-readers', line: 0 };
        return importFile(connection, file, layout, stamp, describe);
      }),
    holds: (file) =>
      queue({}, async () => {
        const stamp = await stampOf(file);
        return stamp !== null && (await holdsFile(connection, stamp));
      }),
    scatteredFiles: () => queue({}, () => scatteredFiles(connection)),
    compact: (watch = {}) => queue(watch, () => compact(connection)),
  };
}
