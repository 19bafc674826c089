import { type DuckDBConnection, INTEGER, LIST, listValue } from '@duckdb/node-api';
import { ABSENT } from '../schema/codes.ts';
import type { StationRecord } from '../schema/weather.ts';
import { type Row, readingOf, STATION, stationOf, unknownStation } from './readRecord.ts';
import { copyRun, endOfRun, integersOf } from './recordRows.ts';
import { VALUE_COLUMNS } from './weatherSchema.ts';

/** The database marks absence itself. */
const orAbsent = (column: string): string => `coalesce(${column}, ${ABSENT}) AS ${column}`;

type ValueColumn = (typeof VALUE_COLUMNS)[number];

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
  const byKey = new Map<number, Place>();
  for (const row of rows) {
    const firstDay = row.first_day as number;
    const days = (row.last_day as number) - firstDay + 1;
    // One piece of memory a station: many small ones of many stations leave holes that add up.
    const all = new Int32Array(5 * days).fill(ABSENT);
    const columns = Array.from({ length: 5 }, (_, column) =>
      all.subarray(column * days, (column + 1) * days),
    );
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

/** Where the columns of a station's record lie. */
interface Place {
  readonly firstDay: number;
  readonly columns: readonly Int32Array[];
}

/**
 * Puts the days of some stations where they belong. Keys without a gap let the database pass over the rest without looking
 * each one up. Totals of several days are seldom: they are read by themselves, where there are any.
 */
async function fillColumns(
  connection: DuckDBConnection,
  keys: readonly number[],
  byKey: ReadonlyMap<number, Place>,
): Promise<void> {
  const first = Math.min(...keys);
  const last = Math.max(...keys);
  const whole = last - first + 1 === keys.length;
  for (const { columns, where } of PASSES) {
    const sql = `SELECT station_key, day_number, ${columns.map(orAbsent).join(', ')} FROM daily
      WHERE station_key BETWEEN $1 AND $2 ${where}`;
    const result = whole
      ? await connection.stream(sql, [first, last], [INTEGER, INTEGER])
      : await connection.stream(
          `${sql} AND station_key IN (SELECT unnest($3))`,
          [first, last, listValue([...keys])],
          [INTEGER, INTEGER, LIST(INTEGER)],
        );
    const places = columns.map((column) => VALUE_COLUMNS.indexOf(column));
    for await (const chunk of result) {
      const [stations, days, ...values] = Array.from({ length: 2 + columns.length }, (_, column) =>
        integersOf(chunk.getColumnVector(column)),
      );
      fillFrom(stations, days, values, places, byKey);
    }
  }
}

/** The two readings of the days: what nearly every day holds, and what few do. */
const PASSES: readonly { readonly columns: readonly ValueColumn[]; readonly where: string }[] = [
  { columns: ['rain_tenths_mm', 'max_temp_tenths_c', 'min_temp_tenths_c'], where: '' },
  {
    columns: ['multi_day_rain_tenths_mm', 'multi_day_count'],
    where: 'AND (multi_day_rain_tenths_mm IS NOT NULL OR multi_day_count IS NOT NULL)',
  },
];

/** Copies rows in runs of days of one station. */
function fillFrom(
  stations: Int32Array,
  days: Int32Array,
  values: readonly Int32Array[],
  places: readonly number[],
  byKey: ReadonlyMap<number, Place>,
): void {
  for (let row = 0; row < days.length; ) {
    const end = endOfRun(days, row, stations);
    const into = byKey.get(stations[row]);
    if (into !== undefined) {
      const columns = places.map((place) => into.columns[place]);
      copyRun(values, row, end, columns, days[row] - into.firstDay);
    }
    row = end;
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
