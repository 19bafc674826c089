import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { INTEGER, LIST, listValue, VARCHAR } from '@duckdb/node-api';
import { InvalidInputError, SourceFailedError } from '../errors.ts';
import type { WeatherExport } from '../schema/weatherExport.ts';
import { lockTo } from './lockDown.ts';
import { holdFile } from './openFiles.ts';
import { quoted } from './quoted.ts';
import { emptyStore } from './storeRefusals.ts';
import { WEATHER_FILE } from './weatherStore.ts';

/** Most memory the database takes for itself while it exports. */
const MEMORY_LIMIT = '800MB';
/** Stations written by one statement: as many files are open at once. */
const STATIONS_AT_ONCE = 64;

/** The query that reads one station's days back from exported files; days without a value are absent. */
export const readBackQuery = (files: string, stationId: string): string =>
  `SELECT day, rain_tenths_mm, max_temp_tenths_c, min_temp_tenths_c, multi_day_rain_tenths_mm, multi_day_count
FROM read_parquet(${quoted(files)}, hive_partitioning = true, hive_types = {'station': VARCHAR})
WHERE station = ${quoted(stationId)} ORDER BY day`;

/**
 * Writes the stored days as Parquet, one folder a station (`station=ID/`), tenths as stored, days in order; the stations
 * themselves go into `stations.parquet`. Nothing that stands in the folder is written over.
 *
 * @param storeFolder data folder of the store
 * @param stationIds which stations; all where absent
 * @throws {MissingDataError} STORE_EMPTY
 * @throws {ConflictError} STORE_BUSY
 * @throws {InvalidInputError} FOLDER_NAME, FOLDER_NOT_EMPTY
 * @throws {SourceFailedError} FILE_NOT_WRITTEN
 */
export async function exportWeather(
  storeFolder: string,
  folder: string,
  stationIds?: readonly string[],
): Promise<WeatherExport> {
  const store = join(storeFolder, WEATHER_FILE);
  if (!existsSync(store)) throw emptyStore(stationIds?.[0] ?? '');
  prepareFolder(folder);
  const file = await holdFile(store, 'read');
  const connection = await file.instance.connect();
  try {
    await connection.run(`SET memory_limit = '${MEMORY_LIMIT}'`);
    await lockTo(connection, resolve(folder));
    const wanted = stationIds === undefined ? '' : 'WHERE list_contains($1, id)';
    const given = stationIds === undefined ? [] : [listValue([...stationIds])];
    const types = stationIds === undefined ? [] : [LIST(VARCHAR)];
    const found = await connection.runAndReadAll(
      `SELECT station_key FROM station ${wanted} ORDER BY station_key`,
      given,
      types,
    );
    const keys = found.getRows().map(([key]) => key as number);
    if (keys.length === 0) throw emptyStore(stationIds?.[0] ?? '');
    let days = 0;
    // The database cuts blanks, and letters beyond ASCII, off the end of this path; a dot keeps them.
    const partitioned = quoted(`${resolve(folder)}/.`);
    for (let at = 0; at < keys.length; at += STATIONS_AT_ONCE) {
      const some = keys.slice(at, at + STATIONS_AT_ONCE);
      const written = await connection.runAndReadAll(
        `COPY (
           SELECT s.id AS station, DATE '1970-01-01' + d.day_number AS day, d.rain_tenths_mm, d.max_temp_tenths_c,
             d.min_temp_tenths_c, d.multi_day_rain_tenths_mm, d.multi_day_count
           FROM daily d JOIN station s USING (station_key)
           WHERE d.station_key BETWEEN ${some[0]} AND ${some[some.length - 1]} AND d.station_key IN (${some.join(', ')})
           ORDER BY d.station_key, d.day_number
         ) TO ${partitioned} (FORMAT parquet, PARTITION_BY (station), OVERWRITE_OR_IGNORE)`,
      );
      days += Number(written.getRows()[0][0]);
    }
    await connection.run(
      `COPY (SELECT id AS station, name, latitude_deg, longitude_deg, elevation_m, invented,
         DATE '1970-01-01' + first_day AS first_date, DATE '1970-01-01' + last_day AS last_date
         FROM station WHERE list_contains($1, station_key) ORDER BY id)
       TO ${quoted(join(resolve(folder), 'stations.parquet'))} (FORMAT parquet)`,
      [listValue(keys)],
      [LIST(INTEGER)],
    );
    const files = `${folder}/station=*/*.parquet`;
    return { folder, stations: keys.length, days, files, query: readBackQuery(files, 'ID') };
  } finally {
    connection.closeSync();
    file.close();
  }
}

function prepareFolder(folder: string): void {
  if (folder.trim() === '') {
    throw new InvalidInputError('FOLDER_NAME', `"${folder}" cannot be the folder's name.`, {
      hint: 'Name a new one, such as records-parquet.',
      details: { folder },
    });
  }
  try {
    mkdirSync(folder, { recursive: true });
    if (readdirSync(folder).length === 0) return;
  } catch (cause) {
    throw new SourceFailedError('FILE_NOT_WRITTEN', `The folder ${folder} cannot be made.`, {
      hint: 'Check that you may write there.',
      details: { folder },
      cause,
    });
  }
  throw new InvalidInputError('FOLDER_NOT_EMPTY', `The folder ${folder} is not empty.`, {
    hint: 'Name a new folder, or empty this one first; nothing is written over.',
    details: { folder },
  });
}
