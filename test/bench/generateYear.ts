import { DuckDBInstance } from '@duckdb/node-api';

/** Month and day of each day of a year, as MMDD. */
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].flatMap((days, month) =>
  Array.from({ length: days }, (_, day) => (month + 1) * 100 + day + 1),
);

/** A year's course of warmth about its mean. [0.1 °C] */
const WARMTH = MONTH_DAYS.map((_, day) => Math.round(150 * Math.sin((day - 110) / 58)));

/** Lines that a station and day come to on the average, from the shares of elements below. */
const LINES_A_DAY = 3.3;

/**
 * Writes a by-year file of about that many lines, by date and then station as a yearly file is. The values come from a
 * hash of the seed and the line's number: a seed always makes the same file.
 */
export async function generateYear(path: string, rows: number, seed = 7): Promise<void> {
  const instance = await DuckDBInstance.create(':memory:', { memory_limit: '1GB' });
  const connection = await instance.connect();
  const stations = Math.max(1, Math.round(rows / (365 * LINES_A_DAY)));
  await connection.run(
    `COPY (
       SELECT 'USC' || lpad(station::VARCHAR, 8, '0'), (19950000 + DAYS[day + 1])::VARCHAR, NAMES[n + 1],
         CASE n WHEN 0 THEN CASE WHEN h % 10 < 7 THEN 0 ELSE h // 16 % 250 END
           WHEN 1 THEN WARMTH[day + 1] + 100 + h % 80
           WHEN 2 THEN WARMTH[day + 1] - 40 + h % 80
           ELSE h % 100 END,
         CASE WHEN n = 0 AND h % 50 = 3 THEN 'T' WHEN n = 0 AND h % 50 = 4 THEN 'P' END,
         CASE WHEN h % 211 = 5 THEN 'I' END, '7', CASE WHEN station % 2 = 0 THEN '0800' END
       FROM (
         SELECT r // ${6 * stations} AS day, r // 6 % ${stations} AS station, r % 6 AS n,
           (hash(r + ${seed}) % 1000003)::INTEGER AS h
         FROM range(${365 * 6 * stations}) t(r)
         WHERE hash(r // 6 % ${stations}, r % 6) % 100 < [100, 55, 55, 50, 40, 30][r % 6 + 1]
       )
     ) TO '${path.replaceAll("'", "''")}' (FORMAT csv, HEADER false)`
      .replaceAll('DAYS', JSON.stringify(MONTH_DAYS))
      .replaceAll('WARMTH', JSON.stringify(WARMTH))
      .replaceAll('NAMES', "['PRCP', 'TMAX', 'TMIN', 'SNOW', 'SNWD', 'TOBS']"),
  );
  connection.closeSync();
  instance.closeSync();
}
