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
  try {
    const fault = await stageFile(connection, path, layout);
    if (fault !== null) return { outcome: 'left-to-readers', line: fault.line };
    await assertNotEmpty(connection, stamp.name);
    const stations = await inTransaction(connection, () => merge(connection, stamp, describe));
    return { outcome: 'imported', stations };
  } finally {
    for (const table of STAGES) await connection.run(`DROP TABLE IF EXISTS ${table}`).catch(() => undefined);
  }
}

/** Temporary tables of an import; what is left of them after an interruption the next import replaces. */
const STAGES = [
  'staged',
  'staged_date',
  'staged_time',
  'station_count',
  'settled',
  'incoming_station',
  'met',
  'met_count',
];

async function merge(
  connection: DuckDBConnection,
  stamp: FileStamp,
  describe: DescribeStations,
): Promise<StationImport[]> {
  await giveKeys(connection, describe, stamp.name);
  const known = await connection.runAndReadAll(
    'SELECT count(*)::DOUBLE FROM incoming_station WHERE NOT is_new',
  );
  const stations = await mergeStaged(connection, stamp.name);
  const wrote = stations.some(({ inserted, replaced }) => inserted + replaced > 0);
  if (wrote && (known.getRows()[0][0] as number) > FEW_STATIONS) await noteScattered(connection);
  await noteFile(connection, stamp);
  return stations;
}

async function assertNotEmpty(connection: DuckDBConnection, name: string): Promise<void> {
  const some = await connection.runAndReadAll('SELECT 1 FROM incoming_station LIMIT 1');
  if (some.currentRowCount > 0) return;
  throw new MissingDataError('STATION_EMPTY', `${name} holds no accepted rain or temperature value.`, {
    hint: 'Choose a file with daily rain and temperatures.',
    details: { source: name },
  });
}
