import {
  type DuckDBAppender,
  DuckDBDataChunk,
  DuckDBIntegerVector,
  type DuckDBResult,
  type DuckDBVector,
  INTEGER,
} from '@duckdb/node-api';
import { ABSENT } from '../schema/codes.ts';
import type { StationRecord } from '../schema/weather.ts';

/** Rows that fit one chunk of the database. */
const CHUNK_ROWS = 2048;

/** The value columns of a record, in the order of the store's. */
const valueColumns = (record: StationRecord): readonly Int32Array[] => [
  record.rainTenthsMm,
  record.maxTempTenthsC,
  record.minTempTenthsC,
  record.multiDayRainTenthsMm,
  record.multiDayCount,
];

/** Appends one row per day that holds any value: day number, the values, the rain's time; NULL where absent. */
export function appendDays(appender: DuckDBAppender, record: StationRecord): void {
  const values = valueColumns(record);
  const columns = [...values, record.rainTimeHhmm ?? null];
  const types = [INTEGER, ...columns.map(() => INTEGER)];
  const days = record.rainTenthsMm.length;
  let day = 0;
  while (day < days) {
    const rows: number[] = [];
    for (; day < days && rows.length < CHUNK_ROWS; day++) {
      if (values.some((column) => column[day] !== ABSENT)) rows.push(day);
    }
    if (rows.length === 0) break;
    const chunk = DuckDBDataChunk.create(types, rows.length);
    chunk.setColumns([
      rows.map((row) => record.firstDay + row),
      ...columns.map((column) =>
        rows.map((row) => (column === null || column[row] === ABSENT ? null : column[row])),
      ),
    ]);
    appender.appendDataChunk(chunk);
  }
  appender.flushSync();
}

/**
 * Dense columns from rows of day number and values, none of which is null.
 * @param firstDay day number of index 0
 * @param days length of the columns [d]
 */
export async function denseColumns(
  result: DuckDBResult,
  firstDay: number,
  days: number,
): Promise<Int32Array[]> {
  const columns = Array.from({ length: result.columnCount - 1 }, () => new Int32Array(days).fill(ABSENT));
  for await (const chunk of result) {
    const dayNumbers = integersOf(chunk.getColumnVector(0));
    const values = columns.map((_, index) => integersOf(chunk.getColumnVector(index + 1)));
    for (let row = 0; row < dayNumbers.length; ) {
      const end = endOfRun(dayNumbers, row);
      copyRun(values, row, end, columns, dayNumbers[row] - firstDay);
      row = end;
    }
  }
  return columns;
}

/** The row after a run of days one after the other, of one station where stations are told. */
export function endOfRun(dayNumbers: Int32Array, row: number, stations?: Int32Array): number {
  const isSame = (one: number) => stations === undefined || stations[one] === stations[row];
  let end = row + 1;
  while (end < dayNumbers.length && dayNumbers[end] === dayNumbers[end - 1] + 1 && isSame(end)) end++;
  return end;
}

/** Copies the rows of a run, column by column, to a place of others. */
export function copyRun(
  from: readonly Int32Array[],
  row: number,
  end: number,
  to: readonly Int32Array[],
  place: number,
): void {
  for (let column = 0; column < from.length; column++) {
    to[column].set(from[column].subarray(row, end), place);
  }
}

/** The plain numbers of a column without nulls; the vector has no other door to them than one value at a time. */
export function integersOf(vector: DuckDBVector): Int32Array {
  if (!(vector instanceof DuckDBIntegerVector)) throw new TypeError('expected a column of integers');
  // biome-ignore lint/complexity/useLiteralKeys: private to TypeScript; the package's version is pinned
  return vector['items'];
}
