import type { DuckDBConnection } from '@duckdb/node-api';
import type { BulkLayout } from './bulkLayout.ts';
import { CALENDAR, pivotedFile, repeatedDays } from './bulkSql.ts';
import { gzipIsWhole } from './gzipWhole.ts';
import { VALUE_COLUMNS } from './weatherSchema.ts';

const HAS_VALUE = `coalesce(${VALUE_COLUMNS.join(', ')}) IS NOT NULL`;

/** Sums of the counts of a reading, in the order of the table `reading`. */
const COUNTS = [
  'values_read',
  'dropped_by_flag',
  'implausible',
  'presumed_zero',
  'duplicated',
  'ignored_elements',
]
  .map((count) => `sum(${count})::INTEGER AS ${count}`)
  .join(', ');

/** Makes the calendar that staging needs; once per connection. */
export const createCalendar = async (connection: DuckDBConnection): Promise<void> => {
  await connection.run(CALENDAR);
};

/**
 * Reads a file into the temporary tables `staged` (a row per station and day) and `incoming_station` (a row per
 * station with an accepted value). To be called inside a transaction.
 * @returns the line at fault where the database names one, or 0, where the file holds anything that the record
 * readers have to judge; null where the tables hold all of it
 */
export async function stageFile(
  connection: DuckDBConnection,
  path: string,
  layout: BulkLayout,
): Promise<{ readonly line: number } | null> {
  const done = new AbortController();
  const whole = layout.compression === 'gzip' ? gzipIsWhole(path, done.signal) : Promise.resolve(true);
  try {
    await connection.run(pivotedFile(path, layout));
    if (!(await whole)) return { line: 0 };
  } catch (error) {
    const reason = error instanceof Error ? error.message : '';
    if (!/CSV|Permission Error|Conversion Error|Out of Range|utf-?8|unicode|gzip|compress/i.test(reason))
      throw error;
    return { line: Number(/CSV Error on Line: (\d+)/.exec(reason)?.[1] ?? 0) };
  } finally {
    done.abort();
    await whole;
  }
  const [damaged, repeats] = await firstRow(
    connection,
    'SELECT count(*) FILTER (damaged)::DOUBLE, count(*) FILTER (repeats)::DOUBLE FROM staged',
  );
  if (damaged !== 0) return { line: 0 };
  if (repeats !== 0) await settleRepeats(connection, path, layout);
  await connection.run(
    `CREATE OR REPLACE TEMP TABLE incoming_station AS
     SELECT *, NULL::INTEGER AS station_key, false AS is_new FROM (
       SELECT id, min(day_number) FILTER (${HAS_VALUE}) AS first_day, max(day_number) FILTER (${HAS_VALUE}) AS last_day,
         (${VALUE_COLUMNS.map((column) => `count(${column})`).join(' + ')})::INTEGER AS accepted,
         count(rain_tenths_mm)::INTEGER AS rain_days,
         count(max_temp_tenths_c + min_temp_tenths_c)::INTEGER AS temperature_days, ${COUNTS}
       FROM staged GROUP BY id
     )`,
  );
  const [strange] = await firstRow(
    connection,
    `SELECT count(*)::DOUBLE FROM incoming_station
     WHERE id IS NULL OR NOT regexp_full_match(id, '[A-Za-z0-9_-]+')`,
  );
  if (strange !== 0) return { line: 0 };
  await connection.run('DELETE FROM incoming_station WHERE first_day IS NULL');
  return null;
}

async function settleRepeats(connection: DuckDBConnection, path: string, layout: BulkLayout): Promise<void> {
  await connection.run(
    `CREATE OR REPLACE TEMP TABLE repeated AS
     SELECT id, date, day_number, ignored_elements FROM staged WHERE repeats`,
  );
  await connection.run('DELETE FROM staged WHERE repeats');
  await connection.run(repeatedDays(path, layout));
  await connection.run('DROP TABLE repeated');
}

async function firstRow(connection: DuckDBConnection, sql: string): Promise<number[]> {
  return (await connection.runAndReadAll(sql)).getRows()[0] as number[];
}
