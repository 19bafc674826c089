import { type DuckDBConnection, INTEGER } from '@duckdb/node-api';
import { MissingDataError } from '../errors.ts';
import { ABSENT } from '../schema/codes.ts';
import type { Station, StationExtent, StationRecord } from '../schema/weather.ts';
import { denseColumns } from './recordRows.ts';
import { emptyStore } from './storeRefusals.ts';
import { DAY_COLUMNS } from './weatherSchema.ts';

/** Columns of a station; table alias s. */
export const STATION = `s.station_key, s.id, s.name, s.latitude_deg, s.longitude_deg, s.elevation_m, s.invented,
  s.first_day, s.last_day`;

const SOURCES = `(SELECT string_agg(r.source, '; ' ORDER BY r.import_number) FROM reading r
  WHERE r.station_key = s.station_key)`;

/** The database marks absence itself: looking every value up in a null mask costs more than the rest. */
const VALUES_OR_ABSENT = DAY_COLUMNS.map((column) => `coalesce(${column}, ${ABSENT}) AS ${column}`).join(
  ', ',
);

export type Row = Record<string, unknown>;

export const stationOf = (row: Row): Station => ({
  id: row.id as string,
  name: row.name as string,
  latitudeDeg: row.latitude_deg as number | null,
  longitudeDeg: row.longitude_deg as number | null,
  elevationM: row.elevation_m as number | null,
  invented: row.invented as boolean,
});

/** All stations of the store with their extents, by id. */
export async function readStations(connection: DuckDBConnection): Promise<StationExtent[]> {
  const result = await connection.runAndReadAll(
    `SELECT ${STATION}, (DATE '1970-01-01' + s.first_day)::VARCHAR AS first_date,
       (DATE '1970-01-01' + s.last_day)::VARCHAR AS last_date, s.rain_days, s.temperature_days, ${SOURCES} AS source
     FROM station s ORDER BY s.id`,
  );
  return result.getRowObjects().map((row) => ({
    ...stationOf(row),
    firstDate: row.first_date as string,
    lastDate: row.last_date as string,
    rainDays: row.rain_days as number,
    temperatureDays: row.temperature_days as number,
    source: row.source as string,
  }));
}

/**
 * One station's whole record, from its first to its last day with any value.
 * @throws {MissingDataError} STATION_UNKNOWN, or STORE_EMPTY where there is no station at all
 */
export async function readRecord(connection: DuckDBConnection, stationId: string): Promise<StationRecord> {
  const found = await connection.runAndReadAll(`SELECT ${STATION} FROM station s WHERE s.id = $1`, [
    stationId,
  ]);
  if (found.currentRowCount === 0) throw await unknownStation(connection, stationId);
  const [row] = found.getRowObjects();
  const key = row.station_key as number;
  const readings = await connection.runAndReadAll(
    'SELECT * FROM reading WHERE station_key = $1 ORDER BY import_number',
    [key],
    [INTEGER],
  );
  const firstDay = row.first_day as number;
  const days = await connection.run(
    `SELECT day_number, ${VALUES_OR_ABSENT} FROM daily WHERE station_key = $1`,
    [key],
    [INTEGER],
  );
  const [rainTenthsMm, maxTempTenthsC, minTempTenthsC, multiDayRainTenthsMm, multiDayCount, times] =
    await denseColumns(days, firstDay, (row.last_day as number) - firstDay + 1);
  return {
    station: stationOf(row),
    firstDay,
    rainTenthsMm,
    maxTempTenthsC,
    minTempTenthsC,
    multiDayRainTenthsMm,
    multiDayCount,
    ...(times.some((time) => time !== ABSENT) ? { rainTimeHhmm: times } : {}),
    ...(await formerPlaces(connection, key)),
    ...readingOf(readings.getRowObjects()),
  };
}

/** Positions that later imports gave otherwise, oldest first; nothing where there are none. */
async function formerPlaces(
  connection: DuckDBConnection,
  key: number,
): Promise<Pick<StationRecord, 'formerPlaces'>> {
  const found = await connection.runAndReadAll(
    `SELECT latitude_deg, longitude_deg, elevation_m, replaced_by FROM former_place WHERE station_key = $1
     ORDER BY rowid`,
    [key],
    [INTEGER],
  );
  if (found.currentRowCount === 0) return {};
  return {
    formerPlaces: found.getRowObjects().map((row) => ({
      latitudeDeg: row.latitude_deg as number | null,
      longitudeDeg: row.longitude_deg as number | null,
      elevationM: row.elevation_m as number | null,
      replacedBy: row.replaced_by as string,
    })),
  };
}

/** Sources and counts of the imports that a record comes from, oldest first. */
export function readingOf(rows: readonly Row[]): Pick<StationRecord, 'reading' | 'source'> {
  const sum = (column: string) => rows.reduce((total, row) => total + (row[column] as number), 0);
  const notes = rows.flatMap((row) => JSON.parse(row.notes as string) as string[]);
  return {
    reading: {
      valuesRead: sum('values_read'),
      droppedByFlag: sum('dropped_by_flag'),
      implausible: sum('implausible'),
      presumedZero: sum('presumed_zero'),
      duplicated: sum('duplicated'),
      ignoredElements: sum('ignored_elements'),
      notes: [...new Set(notes)],
    },
    source: rows.map((row) => row.source as string).join('; '),
  };
}

/** The refusal of an id that is not there, with those most like it. */
export async function unknownStation(
  connection: DuckDBConnection,
  stationId: string,
): Promise<MissingDataError> {
  const result = await connection.runAndReadAll(
    'SELECT id FROM station ORDER BY levenshtein(lower(id), lower($1)), id LIMIT 5',
    [stationId],
  );
  const nearest = result.getRows().map(([id]) => id as string);
  if (nearest.length === 0) return emptyStore(stationId);
  return new MissingDataError('STATION_UNKNOWN', `The store holds no station with the id "${stationId}".`, {
    hint: `The ids most like it: ${nearest.join(', ')}.`,
    details: { stationId, nearest },
  });
}
