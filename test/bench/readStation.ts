import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { createBriefReader } from '../../src/store/briefReader.ts';
import { openWeatherStore, WEATHER_FILE } from '../../src/store/weatherStore.ts';
import { MEMORY_LIMIT } from './bareStatement.ts';
import { medianOf, report } from './report.ts';

const YEARS = 60;
const FIRST_DAY = -3653;
const YEAR_DAYS = 365;
const RUNS = 21;

/** One station's 60 years out of a store of about that many days, as by-year imports leave it and compacted. */
export async function benchRead(folder: string, rows: number): Promise<void> {
  const stations = Math.max(1, Math.round(rows / (YEARS * YEAR_DAYS)));
  mkdirSync(folder, { recursive: true });
  await (await openWeatherStore(folder, { mode: 'write' })).close();
  await fill(folder, stations);
  const on = { storeRows: stations * YEARS * YEAR_DAYS, stations };
  await timeReads(folder, stations, 'before', on);
  const start = performance.now();
  const store = await openWeatherStore(folder, { mode: 'write' });
  await store.compact();
  await store.close();
  report('compact_s', (performance.now() - start) / 1000, 's', on);
  await timeReads(folder, stations, 'after', on);
}

/** Writes the days year after year, each by station and day, as imports of by-year files do. */
async function fill(folder: string, stations: number): Promise<void> {
  const instance = await DuckDBInstance.create(join(folder, WEATHER_FILE), { memory_limit: MEMORY_LIMIT });
  const connection = await instance.connect();
  const lastDay = FIRST_DAY + YEARS * YEAR_DAYS - 1;
  await connection.run(
    `INSERT INTO station SELECT s + 1, 'USC' || lpad(s::VARCHAR, 8, '0'), 'x', NULL, NULL, NULL, false,
       ${FIRST_DAY}, ${lastDay}, ${YEARS * YEAR_DAYS}, ${YEARS * YEAR_DAYS} FROM range(${stations}) r(s)`,
  );
  await connection.run(
    `INSERT INTO reading SELECT s + 1, 1, 'bench', 1, 0, 0, 0, 0, 0, '[]' FROM range(${stations}) r(s)`,
  );
  for (let year = 0; year < YEARS; year++) {
    await connection.run(
      `INSERT INTO daily
       SELECT s + 1, ${FIRST_DAY + year * YEAR_DAYS} + d, CASE WHEN h % 10 < 7 THEN 0 ELSE h // 16 % 250 END,
         h // 4096 % 400 - 50, h // 4096 % 300 - 150, NULL, NULL, 700
       FROM range(${stations}) r(s), range(${YEAR_DAYS}) q(d), LATERAL (SELECT (hash(s, d, ${year}) % 1000000007)::INTEGER AS h)
       ORDER BY s, d`,
    );
  }
  connection.closeSync();
  instance.closeSync();
}

async function timeReads(folder: string, stations: number, when: string, on: object): Promise<void> {
  const id = (run: number) => `USC${String((run * 7919) % stations).padStart(8, '0')}`;
  const store = await openWeatherStore(folder, { mode: 'read' });
  await store.record(id(1));
  const again = await timesOf(() => store.record(id(1)));
  const others = await timesOf((run) => store.record(id(run + 2)));
  await store.close();
  const brief = createBriefReader(folder);
  await brief.record(id(1));
  const opened = await timesOf(() => brief.record(id(1)));
  report(`read_60_years_${when}_compaction_ms`, medianOf(again), 'ms, warm', { ...on });
  report(`read_60_years_${when}_compaction_other_stations_ms`, medianOf(others), 'ms, first time each', {
    ...on,
  });
  report(`read_60_years_${when}_compaction_opening_ms`, medianOf(opened), 'ms, file opened for it', {
    ...on,
  });
}

async function timesOf(read: (run: number) => Promise<unknown>): Promise<number[]> {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    await read(run);
    times.push(performance.now() - start);
  }
  return times;
}
