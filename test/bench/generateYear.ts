import { DuckDBInstance } from '@duckdb/node-api';

/** Lines that a station and day come to on the average, from the shares of elements below. */
const LINES_A_DAY = 3.3;

/**
 * Writes a by-year file of about that many lines, by date and then station as a yearly file is. The values come from a
 * hash of seed, station, day and element: a seed always makes the same file.
 */
export async function generateYear(path: string, rows: number, seed = 7): Promise<void> {
  const instance = await DuckDBInstance.create(':memory:', { memory_limit: '1GB' });
  const connection = await instance.connect();
  const stations = Math.max(1, Math.round(rows / (365 * LINES_A_DAY)));
  await connection.run(
    `COPY (
       SELECT 'USC' || lpad(station::VARCHAR, 8, '0'), strftime(DATE '1995-01-01' + day::INTEGER, '%Y%m%d'), element,
         CASE element
           WHEN 'PRCP' THEN CASE WHEN h % 10 < 7 THEN 0 ELSE (h // 16 % 250)::INTEGER END
           WHEN 'TMAX' THEN (100 + 180 * sin((day - 110) / 58.0))::INTEGER + (h % 80)::INTEGER
           WHEN 'TMIN' THEN (-40 + 150 * sin((day - 110) / 58.0))::INTEGER + (h % 80)::INTEGER
           ELSE (h % 100)::INTEGER END,
         CASE WHEN element = 'PRCP' THEN CASE h % 50 WHEN 3 THEN 'T' WHEN 4 THEN 'P' END END,
         CASE WHEN h % 211 = 5 THEN 'I' END, '7', CASE WHEN station % 2 = 0 THEN '0800' END
       FROM (
         SELECT day, station, unnest(list_filter(
           [{'element': 'PRCP', 'n': 0}, {'element': 'TMAX', 'n': 1}, {'element': 'TMIN', 'n': 2},
            {'element': 'SNOW', 'n': 3}, {'element': 'SNWD', 'n': 4}, {'element': 'TOBS', 'n': 5}],
           lambda e: hash(station, e.n) % 100 < [100, 55, 55, 50, 40, 30][e.n + 1]), recursive := true)
         FROM range(365) d(day), range(${stations}) s(station)
       ), LATERAL (SELECT hash(station, day, n, ${seed}) AS h)
     ) TO '${path.replaceAll("'", "''")}' (FORMAT csv, HEADER false)`,
  );
  connection.closeSync();
  instance.closeSync();
}
