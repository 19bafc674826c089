import { type DuckDBConnection, INTEGER, LIST, listValue } from '@duckdb/node-api';
import { ABSENT } from '../schema/codes.ts';
import type { StationRecord } from '../schema/weather.ts';
import { type Row, readingOf, STATION, stationOf, unknownStation } from './readRecord.ts';
import { integersOf } from './recordRows.ts';
import { VALUE_COLUMNS } from './weatherSchema.ts';

/** The database marks absence itself. */
const VALUES_OR_ABSENT = VALUE_COLUMNS.map((column) => `coalesce(${column}, ${ABSENT}) AS ${column}`).join(
  ', ',
);

/**
 * Several stations' whole records by one pass over their days, in the order asked for; without the hours of reading and former
 * places, which only the check of a single station tells.
 * @throws {MissingDataError} STATION_UNKNOWN where one is not there
 */
export async function readRecords(
  connection: DuckDBConnection,
  stationIds: readonly string[],
): Promise<StationRecord[]> {
  if (stationIds.length === 0) return [];
  const placeholders = stationIds.map((_, index) => `$${index + 1}`).join(', ');
  const found = await connection.runAndReadAll(
    `SELECT ${STATION} FROM station s WHERE s.id IN (${placeholders})`,
    [...stationIds],
  );
  const rows = found.getRowObjects();
  const keys = rows.map((row) => row.station_key as number);
  const readings = await readingsOf(connection, keys);
  const records = new Map<string, StationRecord>();
  const byKey = new Map<number, { firstDay: number; columns: Int32Array[] }>();
  for (const row of rows) {
    const firstDay = row.first_day as number;
    const days = (row.last_day as number) - firstDay + 1;
    const columns = Array.from({ length: 5 }, () => new Int32Array(days).fill(ABSENT));
    const [rainTenthsMm, maxTempTenthsC, minTempTenthsC, multiDayRainTenthsMm, multiDayCount] = columns;
    byKey.set(row.station_key as number, { firstDay, columns });
    records.set(row.id as string, {
      station: stationOf(row),
      firstDay,
      rainTenthsMm,
      maxTempTenthsC,
      minTempTenthsC,
      multiDayRainTenthsMm,
      multiDayCount,
      ...readingOf(readings.get(row.station_key as number) ?? []),
    });
  }
  const missing = stationIds.find((id) => !records.has(id));
  if (missing !== undefined) throw await unknownStation(connection, missing);
  await fillColumns(connection, keys, byKey);
  return stationIds.flatMap((id) => records.get(id) ?? []);
}

/** Puts the days of some stations where they belong. Keys that lie close let the database pass over the rest. */
async function fillColumns(
  connection: DuckDBConnection,
  keys: readonly number[],
  byKey: ReadonlyMap<number, { readonly firstDay: number; readonly columns: readonly Int32Array[] }>,
): Promise<void> {
  const result = await connection.run(
    `SELECT station_key, day_number, ${VALUES_OR_ABSENT} FROM daily
     WHERE station_key BETWEEN $1 AND $2 AND list_contains($3, station_key)`,
    [Math.min(...keys), Math.max(...keys), listValue([...keys])],
    [INTEGER, INTEGER, LIST(INTEGER)],
  );
  for await (const chunk of result) {
    const stations = integersOf(chunk.getColumnVector(0));
    const days = integersOf(chunk.getColumnVector(1));
    const values = Array.from({ length: 5 }, (_, column) => integersOf(chunk.getColumnVector(column + 2)));
    let key = Number.NaN;
    let into = byKey.get(key);
    for (let row = 0; row < days.length; row++) {
      if (stations[row] !== key) {
        key = stations[row];
        into = byKey.get(key);
      }
      if (into === undefined) continue;
      const day = days[row] - into.firstDay;
      for (let column = 0; column < 5; column++) into.columns[column][day] = values[column][row];
    }
  }
}

async function readingsOf(
  connection: DuckDBConnection,
  keys: readonly number[],
): Promise<Map<number, Row[]>> {
  const result = await connection.runAndReadAll(
    'SELECT * FROM reading WHERE list_contains($1, station_key) ORDER BY station_key, import_number',
    [listValue([...keys])],
    [LIST(INTEGER)],
  );
  const byKey = new Map<number, Row[]>();
  for (const row of result.getRowObjects()) {
    const key = row.station_key as number;
    byKey.set(key, [...(byKey.get(key) ?? []), row]);
  }
  return byKey;
}
