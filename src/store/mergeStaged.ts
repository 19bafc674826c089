import type { DuckDBConnection } from '@duckdb/node-api';
import { ACCEPTED_DAYS } from './bulkSql.ts';
import { DAY_COLUMNS, VALUE_COLUMNS } from './weatherSchema.ts';

const VALUES = VALUE_COLUMNS.join(', ');
const sumOf = (condition: (column: string) => string): string =>
  VALUE_COLUMNS.map((column) => `(${condition(column)})::INTEGER`).join(' + ');

/** Whether a stored row and a staged one say different things where the staged one says anything. */
const CHANGED = DAY_COLUMNS.map(
  (c) => `coalesce(new_${c} IS DISTINCT FROM old_${c} AND new_${c} IS NOT NULL, false)`,
).join(' OR ');

/** Stored days of the incoming stations within the incoming days, beside what the file says of them. */
const MET = `
  CREATE OR REPLACE TEMP TABLE met AS
  SELECT d.stored_row, d.station_key, d.day_number, s.station_key IS NOT NULL AS matched,
    ${DAY_COLUMNS.map((c) => `d.${c} AS old_${c}, s.${c} AS new_${c}`).join(', ')}
  FROM (SELECT rowid AS stored_row, * FROM daily WHERE day_number BETWEEN $1 AND $2) d
  JOIN incoming_station i ON i.station_key = d.station_key
  LEFT JOIN (${ACCEPTED_DAYS}) s ON s.station_key = d.station_key AND s.day_number = d.day_number`;

/** Per station: values in both, values that differ, values that only the store holds, and days gained. */
const MET_COUNTS = `
  SELECT station_key, sum(${sumOf((c) => `old_${c} IS NOT NULL AND new_${c} IS NOT NULL`)})::INTEGER AS in_both,
    sum(${sumOf((c) => `coalesce(old_${c} <> new_${c}, false)`)})::INTEGER AS replaced,
    sum(${sumOf((c) => `old_${c} IS NOT NULL AND new_${c} IS NULL`)})::INTEGER AS kept,
    count(old_rain_tenths_mm + new_rain_tenths_mm)::INTEGER AS rain_in_both,
    (count(coalesce(new_max_temp_tenths_c, old_max_temp_tenths_c) + coalesce(new_min_temp_tenths_c, old_min_temp_tenths_c))
      - count(old_max_temp_tenths_c + old_min_temp_tenths_c)
      - count(new_max_temp_tenths_c + new_min_temp_tenths_c))::INTEGER AS temperature_days_met
  FROM met GROUP BY station_key`;

/** What a file's import changed of one station. */
export interface StationImport {
  readonly stationId: string;
  readonly firstDay: number;
  readonly lastDay: number;
  readonly valuesRead: number;
  /** Values dropped by a quality flag or as impossible. */
  readonly dropped: number;
  readonly duplicated: number;
  readonly inserted: number;
  readonly replaced: number;
}

/**
 * Merges the staged file, whose stations have their keys, into the stored days: a value of the file wins, and where it
 * holds none the stored one stays. To be called inside a transaction, after the stations' rows are there.
 * @param source name under which the reading is noted
 */
export async function mergeStaged(connection: DuckDBConnection, source: string): Promise<StationImport[]> {
  await matchStored(connection);
  await writeDays(connection);
  await writeReadings(connection, source);
  await writeExtents(connection);
  const result = await connection.runAndReadAll(
    `SELECT id, i.first_day, i.last_day, values_read, dropped_by_flag + implausible, duplicated,
       accepted - coalesce(in_both, 0), coalesce(replaced, 0)
     FROM incoming_station i LEFT JOIN met_count USING (station_key) ORDER BY id`,
  );
  return (result.getRows() as [string, ...number[]][]).map(
    ([stationId, firstDay, lastDay, valuesRead, dropped, duplicated, inserted, replaced]) => ({
      stationId,
      firstDay,
      lastDay,
      valuesRead,
      dropped,
      duplicated,
      inserted,
      replaced,
    }),
  );
}

async function matchStored(connection: DuckDBConnection): Promise<void> {
  const range = await connection.runAndReadAll(
    'SELECT min(first_day), max(last_day), count(*) FILTER (NOT is_new)::DOUBLE FROM incoming_station',
  );
  const [first, last, known] = range.getRows()[0] as [number, number, number];
  await connection.run(MET, known === 0 ? [1, 0] : [first, last]);
  await connection.run(`CREATE OR REPLACE TEMP TABLE met_count AS ${MET_COUNTS}`);
}

/** Writes days that are new or changed, by station and day; rows that say nothing new are left alone. */
async function writeDays(connection: DuckDBConnection): Promise<void> {
  const matched = await connection.runAndReadAll('SELECT count(*)::DOUBLE FROM met WHERE matched');
  const staged = `SELECT * FROM (${ACCEPTED_DAYS}) WHERE coalesce(${VALUES}) IS NOT NULL`;
  if (matched.getRows()[0][0] === 0) {
    await connection.run(`INSERT INTO daily ${staged} ORDER BY station_key, day_number`);
    return;
  }
  await connection.run(
    `DELETE FROM daily WHERE rowid IN (SELECT stored_row FROM met WHERE matched AND (${CHANGED}))`,
  );
  await connection.run(
    `INSERT INTO daily
     SELECT * FROM (
       SELECT * FROM (${staged}) n
       WHERE NOT EXISTS (
         SELECT 1 FROM met m WHERE m.matched AND m.station_key = n.station_key AND m.day_number = n.day_number)
       UNION ALL
       SELECT station_key, day_number, ${DAY_COLUMNS.map((c) => `coalesce(new_${c}, old_${c})`).join(', ')}
       FROM met WHERE matched AND (${CHANGED})
     ) ORDER BY station_key, day_number`,
  );
}

/** Notes the import; earlier ones stay only while values of theirs do. The same source counts once. */
async function writeReadings(connection: DuckDBConnection, source: string): Promise<void> {
  await connection.run(
    `DELETE FROM reading USING (
       SELECT i.station_key, s.first_day < i.first_day OR s.last_day > i.last_day OR coalesce(kept, 0) > 0 AS earlier_stay
       FROM incoming_station i JOIN station s USING (station_key) LEFT JOIN met_count USING (station_key)
     ) k
     WHERE reading.station_key = k.station_key AND (reading.source = $1 OR NOT k.earlier_stay)`,
    [source],
  );
  await connection.run(
    `INSERT INTO reading
     SELECT station_key, (SELECT coalesce(max(import_number), 0) + 1 FROM reading), $1, values_read, dropped_by_flag,
       implausible, presumed_zero, duplicated, ignored_elements, '[]'
     FROM incoming_station`,
    [source],
  );
}

/** New stations have no days before, so that the same sums serve all. */
async function writeExtents(connection: DuckDBConnection): Promise<void> {
  await connection.run(
    `UPDATE station SET
       first_day = CASE WHEN e.is_new THEN e.first_day ELSE least(station.first_day, e.first_day) END,
       last_day = CASE WHEN e.is_new THEN e.last_day ELSE greatest(station.last_day, e.last_day) END,
       rain_days = station.rain_days + e.rain_days - coalesce(e.rain_in_both, 0),
       temperature_days = station.temperature_days + e.temperature_days + coalesce(e.temperature_days_met, 0)
     FROM (SELECT * FROM incoming_station LEFT JOIN met_count USING (station_key)) e
     WHERE station.station_key = e.station_key`,
  );
}
