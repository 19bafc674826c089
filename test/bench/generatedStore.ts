import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { dayNumberOf } from '../../src/calendar.ts';
import { openWeatherStore, WEATHER_FILE } from '../../src/store/weatherStore.ts';
import { MEMORY_LIMIT } from './bareStatement.ts';

/** Stations written by one statement, which keeps memory small. */
const STATIONS_AT_ONCE = 250;

/**
 * Makes a store of generated stations that end with 2025, each one's days together, as after a compaction. Rain, warmth
 * and gaps come from a hash: the same numbers make the same store.
 */
export async function generateStore(folder: string, stations: number, years: number): Promise<void> {
  mkdirSync(folder, { recursive: true });
  await (await openWeatherStore(folder, { mode: 'write' })).close();
  const instance = await DuckDBInstance.create(join(folder, WEATHER_FILE), { memory_limit: MEMORY_LIMIT });
  const connection = await instance.connect();
  const firstDay = dayNumberOf(2026 - years, 1, 1);
  const days = dayNumberOf(2026, 1, 1) - firstDay;
  await connection.run(
    `INSERT INTO station SELECT s + 1, 'GEN' || lpad(s::VARCHAR, 8, '0'), 'Generated ' || s, 32 + (s % 160) / 10.0,
       -120 + (s * 7 % 500) / 10.0, 300, true, ${firstDay}, ${firstDay + days - 1}, ${days}, ${days}
     FROM range(${stations}) r(s)`,
  );
  await connection.run(
    `INSERT INTO reading SELECT s + 1, 1, 'generated', ${3 * days}, 0, 0, 0, 0, 0, '[]' FROM range(${stations}) r(s)`,
  );
  for (let from = 0; from < stations; from += STATIONS_AT_ONCE) {
    await connection.run(
      `INSERT INTO daily
       SELECT s + 1, ${firstDay} + d,
         CASE WHEN h % 100 = 99 THEN NULL WHEN h % 100 >= 14 + s % 20 THEN 0 ELSE h // 128 % 160 END,
         t + 20 + h // 1024 % 100, t - 20 - h // 65536 % 100, NULL, NULL, NULL
       FROM range(${from}, ${Math.min(stations, from + STATIONS_AT_ONCE)}) r(s), range(${days}) q(d),
         LATERAL (SELECT (hash(s, d) % 1000000007)::INTEGER AS h,
           (90 + s % 11 * 5 - 140 * cos(2 * pi() * d / 365.25))::INTEGER AS t)
       ORDER BY s, d`,
    );
  }
  connection.closeSync();
  instance.closeSync();
}
