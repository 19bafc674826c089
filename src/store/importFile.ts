import type { DuckDBConnection } from '@duckdb/node-api';
import { MissingDataError } from '../errors.ts';
import type { BulkLayout } from './bulkLayout.ts';
import { noteScattered } from './compact.ts';
import { type FileStamp, noteFile } from './importedFiles.ts';
import { mergeStaged, type StationImport } from './mergeStaged.ts';
import { stageFile } from './stageFile.ts';
import { type DescribeStations, giveKeys } from './stationRows.ts';
import { inTransaction } from './transaction.ts';

/** How a file of the eight-field layout went in. */
export type FileImport =
  | { readonly outcome: 'imported'; readonly stations: readonly StationImport[] }
  /** Nothing was changed: the record readers have to judge the file; `line` is where it broke, 0 where unknown. */
  | { readonly outcome: 'left-to-readers'; readonly line: number };

/** More stations than this with earlier days elsewhere make an import scattered. */
const FEW_STATIONS = 1;

/**
 * Imports a whole file by the database alone, in one transaction of its own.
 * @throws {MissingDataError} STATION_EMPTY where it holds no accepted value
 * @throws {ConflictError} STATION_INVENTED
 */
export async function importFile(
  connection: DuckDBConnection,
  path: string,
  layout: BulkLayout,
  stamp: FileStamp,
  describe: DescribeStations,
): Promise<FileImport> {
  return inTransaction(connection, async () => {
    const fault = await stageFile(connection, path, layout);
    if (fault !== null) throw new LeftToReaders(fault.line);
    await assertNotEmpty(connection, stamp.name);
    await giveKeys(connection, describe);
    const scattered = await connection.runAndReadAll(
      'SELECT count(*)::DOUBLE FROM incoming_station WHERE NOT is_new',
    );
    const stations = await mergeStaged(connection, stamp.name);
    const wrote = stations.some(({ inserted, replaced }) => inserted + replaced > 0);
    if (wrote && (scattered.getRows()[0][0] as number) > FEW_STATIONS) await noteScattered(connection);
    await noteFile(connection, stamp);
    for (const table of ['staged', 'incoming_station', 'met', 'met_count']) {
      await connection.run(`DROP TABLE IF EXISTS ${table}`);
    }
    return { outcome: 'imported', stations } as const;
  }).catch((error: unknown) => {
    if (error instanceof LeftToReaders) return { outcome: 'left-to-readers', line: error.line } as const;
    throw error;
  });
}

/** Ends the transaction of a file that the record readers have to judge. */
class LeftToReaders extends Error {
  constructor(readonly line: number) {
    super('left to the record readers');
  }
}

async function assertNotEmpty(connection: DuckDBConnection, name: string): Promise<void> {
  const some = await connection.runAndReadAll('SELECT 1 FROM incoming_station LIMIT 1');
  if (some.currentRowCount > 0) return;
  throw new MissingDataError('STATION_EMPTY', `${name} holds no accepted rain or temperature value.`, {
    hint: 'Choose a file with daily rain and temperatures.',
    details: { source: name },
  });
}
