import { type DuckDBConnection, INTEGER } from '@duckdb/node-api';
import { MissingDataError } from '../errors.ts';
import type { StationRecord } from '../schema/weather.ts';
import { appendDays } from './recordRows.ts';
import { placeDiffers } from './stationRows.ts';
import { inventedConflict } from './storeRefusals.ts';
import { DAY_COLUMNS, RAIN_TIME, VALUE_COLUMNS } from './weatherSchema.ts';

/** What an import changed; counts are of element values. */
export interface ImportCount {
  /** Values on days and elements that held none before. */
  readonly inserted: number;
  /** Values that took the place of a different one. */
  readonly replaced: number;
}

const COLUMNS = DAY_COLUMNS.join(', ');

/** Tables of the connection in which a record meets the stored one; made once. */
export async function createMergeTables(connection: DuckDBConnection): Promise<void> {
  for (const table of ['incoming', 'merged']) {
    const columns = ['day_number', ...DAY_COLUMNS].map((column) => `${column} INTEGER`).join(', ');
    await connection.run(`CREATE TEMP TABLE ${table} (${columns})`);
  }
}

/**
 * Merges a record into the stored one, day by day and element by element: a value of the new record wins, and where it
 * holds none the stored one stays. To be called inside a transaction.
 * @throws {MissingDataError} STATION_EMPTY
 * @throws {ConflictError} STATION_INVENTED where an invented and a real record would mix
 */
export async function mergeRecord(connection: DuckDBConnection, record: StationRecord): Promise<ImportCount> {
  await fillIncoming(connection, record);
  const key = await stationKey(connection, record);
  const { kept, times, ...count } = await compare(connection, key);
  if (count.inserted + count.replaced + times > 0) await rewriteDays(connection, key);
  await writeReading(connection, key, record, kept > 0);
  await writeExtent(connection, key);
  return count;
}

async function fillIncoming(connection: DuckDBConnection, record: StationRecord): Promise<void> {
  await connection.run('DELETE FROM incoming');
  const appender = await connection.createAppender('incoming', 'main', 'temp');
  try {
    appendDays(appender, record);
  } finally {
    appender.closeSync();
  }
  const filled = await connection.runAndReadAll('SELECT 1 FROM incoming LIMIT 1');
  if (filled.currentRowCount > 0) return;
  const { id } = record.station;
  throw new MissingDataError('STATION_EMPTY', `The record of station ${id} holds no value.`, {
    hint: 'Import a record with daily rain and temperatures.',
    details: { stationId: id },
  });
}

/** Key of the record's station, whose row is made or brought up to date; a known name or position is never lost. */
async function stationKey(connection: DuckDBConnection, record: StationRecord): Promise<number> {
  const { id, name, latitudeDeg, longitudeDeg, elevationM, invented } = record.station;
  const known = await connection.runAndReadAll('SELECT station_key, invented FROM station WHERE id = $1', [
    id,
  ]);
  const place = [name, latitudeDeg, longitudeDeg, elevationM];
  if (known.currentRowCount === 0) {
    const added = await connection.runAndReadAll(
      `INSERT INTO station
       SELECT coalesce(max(station_key), 0) + 1, $1, $2, $3, $4, $5, $6, 0, 0, 0, 0 FROM station
       RETURNING station_key`,
      [id, ...place, invented],
    );
    return added.getRows()[0][0] as number;
  }
  const [key, storedInvented] = known.getRows()[0] as [number, boolean];
  if (storedInvented !== invented) {
    throw inventedConflict(id, storedInvented);
  }
  await connection.run(
    `INSERT INTO former_place
     SELECT station_key, latitude_deg, longitude_deg, elevation_m, $2 FROM station
     WHERE station_key = $1 AND ${placeDiffers('$3', '$4', '$5')}`,
    [key, record.source, latitudeDeg, longitudeDeg, elevationM],
    [INTEGER],
  );
  await connection.run(
    `UPDATE station SET
       name = CASE WHEN $2 = id THEN name ELSE $2 END,
       latitude_deg = coalesce($3, latitude_deg),
       longitude_deg = coalesce($4, longitude_deg),
       elevation_m = coalesce($5, elevation_m)
     WHERE station_key = $1`,
    [key, ...place],
    [INTEGER],
  );
  return key;
}

/** Counts values that are new, that differ, and that only the stored record holds (kept); and times of reading to write. */
async function compare(
  connection: DuckDBConnection,
  key: number,
): Promise<ImportCount & { kept: number; times: number }> {
  const total = (condition: (column: string) => string) =>
    `${VALUE_COLUMNS.map((column) => `count(*) FILTER (${condition(column)})`).join(' + ')}`;
  const counted = await connection.runAndReadAll(
    `SELECT (${total((c) => `i.${c} IS NOT NULL AND d.${c} IS NULL`)})::INTEGER,
            (${total((c) => `i.${c} <> d.${c}`)})::INTEGER,
            (${total((c) => `i.${c} IS NULL AND d.${c} IS NOT NULL`)})::INTEGER,
            (count(*) FILTER (i.${RAIN_TIME} IS NOT NULL AND i.${RAIN_TIME} IS DISTINCT FROM d.${RAIN_TIME}))::INTEGER
     FROM incoming i FULL JOIN (SELECT * FROM daily WHERE station_key = $1) d USING (day_number)`,
    [key],
    [INTEGER],
  );
  const [inserted, replaced, kept, times] = counted.getRows()[0] as [number, number, number, number];
  return { inserted, replaced, kept, times };
}

/** Writes the station's days anew, so that they lie together and in order. */
async function rewriteDays(connection: DuckDBConnection, key: number): Promise<void> {
  const merged = DAY_COLUMNS.map((column) => `coalesce(i.${column}, d.${column})`).join(', ');
  await connection.run('DELETE FROM merged');
  await connection.run(
    `INSERT INTO merged
     SELECT day_number, ${merged}
     FROM incoming i FULL JOIN (SELECT * FROM daily WHERE station_key = $1) d USING (day_number)`,
    [key],
    [INTEGER],
  );
  await connection.run('DELETE FROM daily WHERE station_key = $1', [key], [INTEGER]);
  await connection.run(
    `INSERT INTO daily SELECT $1, day_number, ${COLUMNS} FROM merged ORDER BY day_number`,
    [key],
    [INTEGER],
  );
}

/** Notes the import; earlier ones stay only while values of theirs do. The same source counts once. */
async function writeReading(
  connection: DuckDBConnection,
  key: number,
  { reading, source }: StationRecord,
  earlierStay: boolean,
): Promise<void> {
  await connection.run(
    'DELETE FROM reading WHERE station_key = $1 AND (source = $2 OR NOT $3)',
    [key, source, earlierStay],
    [INTEGER],
  );
  await connection.run(
    `INSERT INTO reading
     SELECT $1, coalesce(max(import_number), 0) + 1, $2, $3, $4, $5, $6, $7, $8, $9 FROM reading`,
    [
      key,
      source,
      reading.valuesRead,
      reading.droppedByFlag,
      reading.implausible,
      reading.presumedZero,
      reading.duplicated,
      reading.ignoredElements,
      JSON.stringify(reading.notes),
    ],
    [INTEGER],
  );
}

async function writeExtent(connection: DuckDBConnection, key: number): Promise<void> {
  await connection.run(
    `UPDATE station SET first_day = e.first_day, last_day = e.last_day,
       rain_days = e.rain_days, temperature_days = e.temperature_days
     FROM (
       SELECT min(day_number) AS first_day, max(day_number) AS last_day, count(rain_tenths_mm) AS rain_days,
              count(max_temp_tenths_c + min_temp_tenths_c) AS temperature_days
       FROM daily WHERE station_key = $1
     ) e
     WHERE station_key = $1`,
    [key],
    [INTEGER],
  );
}
