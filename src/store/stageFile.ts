import type { DuckDBConnection } from '@duckdb/node-api';
import type { BulkLayout } from './bulkLayout.ts';
import {
  IMPOSSIBLE_COUNTS,
  PLACE_SETTLED,
  pivotedFile,
  repeatedDays,
  STAGED_DATES,
  STAGED_FAULTS,
  STAGED_TIMES,
  STATION_COUNTS,
} from './bulkSql.ts';
import { gzipState } from './gzipWhole.ts';
import { swollenFile } from './storeRefusals.ts';
import { VALUE_COLUMNS } from './weatherSchema.ts';

/** Faults of a file, not of the store, by the database's words for them. */
const FILE_AT_FAULT =
  /CSV|Permission Error|Conversion Error|Out of Range|Could not convert|utf-?8|unicode|gzip|decompress/i;

/**
 * Reads a file into temporary tables: `staged` a row per station and day, `staged_date` its dates as day numbers,
 * `staged_time` its hours of reading, `incoming_station` a row per station with an accepted value and the counts of its reading. Outside a transaction: what
 * a transaction has not yet committed is read by one thread alone.
 * @returns the line at fault where the database names one, or 0, where the file holds anything that the record
 * readers have to judge; null where the tables hold all of it
 * @throws {SourceFailedError} FILE_TOO_LARGE where it is packed and unpacks to far more than a record would
 */
export async function stageFile(
  connection: DuckDBConnection,
  path: string,
  layout: BulkLayout,
): Promise<{ readonly line: number } | null> {
  const done = new AbortController();
  let isSwollen = false;
  const lookThrough = async (): Promise<boolean> => {
    const state = layout.compression === 'gzip' ? await gzipState(path, done.signal) : 'whole';
    isSwollen = state === 'swollen';
    if (isSwollen) connection.interrupt();
    return state === 'whole';
  };
  const whole = lookThrough();
  try {
    await connection.run(pivotedFile(path, layout));
    const isWhole = await whole;
    if (isSwollen) throw swollenFile(path);
    if (!isWhole) return { line: 0 };
  } catch (error) {
    if (isSwollen) throw swollenFile(path);
    const reason = error instanceof Error ? error.message : '';
    if (!FILE_AT_FAULT.test(reason)) throw error;
    return { line: Number(/CSV Error on Line: (\d+)/.exec(reason)?.[1] ?? 0) };
  } finally {
    done.abort();
    await whole;
  }
  await connection.run(STAGED_DATES);
  const [damaged, repeats, impossible] = await firstRow(connection, STAGED_FAULTS);
  if (damaged || (await isTrue(connection, 'SELECT count(*) > 0 FROM staged_date WHERE day_number IS NULL')))
    return { line: 0 };
  if (repeats) await settleRepeats(connection, path, layout);
  await connection.run(STAGED_TIMES);
  await connection.run(STATION_COUNTS);
  if (await isTrue(connection, STRANGE_IDS)) return { line: 0 };
  await countStations(connection, repeats, impossible);
  return null;
}

const STRANGE_IDS = `SELECT count(*) > 0 FROM station_count
  WHERE id IS NULL OR NOT regexp_full_match(id, '[A-Za-z0-9_-]+')`;

async function firstRow(connection: DuckDBConnection, sql: string): Promise<boolean[]> {
  return (await connection.runAndReadAll(sql)).getRows()[0] as boolean[];
}

const isTrue = async (connection: DuckDBConnection, sql: string): Promise<boolean> =>
  (await firstRow(connection, sql))[0];

async function settleRepeats(connection: DuckDBConnection, path: string, layout: BulkLayout): Promise<void> {
  await connection.run(repeatedDays(path, layout));
  for (const statement of PLACE_SETTLED) await connection.run(statement);
}

/** Of no station. */
const NO_COUNTS = `SELECT NULL::VARCHAR AS id, 0 AS accepted, 0 AS values_read, 0 AS dropped_by_flag, 0 AS implausible,
  0 AS presumed_zero, 0 AS duplicated`;

/** Stations with any accepted value; what settled days came to is added to the counts of the others. */
async function countStations(
  connection: DuckDBConnection,
  settled: boolean,
  impossible: boolean,
): Promise<void> {
  const sums = settled
    ? `SELECT id, ${VALUE_COLUMNS.map((column) => `count(${column})`).join(' + ')} AS accepted, sum(values_read) AS values_read,
         sum(dropped_by_flag) AS dropped_by_flag, sum(implausible) AS implausible, sum(presumed_zero) AS presumed_zero,
         sum(duplicated) AS duplicated
       FROM settled GROUP BY id`
    : NO_COUNTS;
  const both = (count: string) => `(c.${count} + coalesce(z.${count}, 0))::INTEGER AS ${count}`;
  await connection.run(
    `CREATE OR REPLACE TEMP TABLE incoming_station AS
     SELECT c.id, f.day_number AS first_day, l.day_number AS last_day, c.accepted::INTEGER AS accepted,
       c.rain_days::INTEGER AS rain_days, c.temperature_days::INTEGER AS temperature_days, ${both('values_read')},
       (c.values_read - (c.accepted - coalesce(z.accepted, 0)) - coalesce(p.implausible, 0)
         + coalesce(z.dropped_by_flag, 0))::INTEGER AS dropped_by_flag,
       (coalesce(p.implausible, 0) + coalesce(z.implausible, 0))::INTEGER AS implausible,
       ${both('presumed_zero')}, coalesce(z.duplicated, 0)::INTEGER AS duplicated,
       c.ignored_elements::INTEGER AS ignored_elements, NULL::INTEGER AS station_key, false AS is_new
     FROM station_count c JOIN staged_date f ON f.date = c.first_date JOIN staged_date l ON l.date = c.last_date
     LEFT JOIN (${impossible ? IMPOSSIBLE_COUNTS : NO_COUNTS}) p ON p.id = c.id LEFT JOIN (${sums}) z ON z.id = c.id`,
  );
}
