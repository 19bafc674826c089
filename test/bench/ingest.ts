import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { DuckDBInstance } from '@duckdb/node-api';
import { bareStatement } from './bareStatement.ts';
import { generateYear } from './generateYear.ts';
import { benchRead } from './readStation.ts';
import { medianOf, report } from './report.ts';
import { sizesOf } from './sizes.ts';

const run = promisify(execFile);
const once = fileURLToPath(new URL('ingestOnce.ts', import.meta.url));
const real = fileURLToPath(new URL('../../../shared/weather/bench/', import.meta.url));

interface Once {
  readonly ms: number;
  readonly cpuMs: number;
  readonly peakMb: number;
}

/** Imports against a bare statement of the database, alternating, and one station's read from a large store. */
export async function benchIngest(argv: string[]): Promise<void> {
  const sizes = sizesOf(argv, {
    rows: { full: 2_000_000, small: 20_000 },
    rounds: { full: 3, small: 1 },
    'store-rows': { full: 5_000_000, small: 50_000 },
    folder: { full: tmpdir() },
  });
  const folder = mkdtempSync(join(sizes.folder, 'drywake-bench-'));
  try {
    const year = join(folder, '1995.csv');
    const start = performance.now();
    await generateYear(year, Number(sizes.rows));
    report('generated_file_ms', performance.now() - start, 'ms');
    console.log(JSON.stringify({ name: 'bare_statement', sql: bareStatement('FILE') }));
    const files = [year, ...['1995-dev.csv.gz', 'ghcn-dev-long.csv.gz'].map((name) => join(real, name))];
    for (const path of files.filter(existsSync)) await compare(path, folder, Number(sizes.rounds));
    rmSync(year);
    await benchRead(join(folder, 'read'), Number(sizes['store-rows']));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function compare(path: string, folder: string, rounds: number): Promise<void> {
  const { lines, megabytes } = await sizeOf(path);
  const on = { file: basename(path), lines };
  const results: Record<'bare' | 'store', Once[]> = { bare: [], store: [] };
  for (let round = 0; round < rounds; round++) {
    for (const way of round % 2 === 0 ? (['bare', 'store'] as const) : (['store', 'bare'] as const)) {
      const place = join(folder, 'once');
      mkdirSync(place);
      const { stdout } = await run(process.execPath, [...process.execArgv, once, way, path, place]);
      results[way].push(JSON.parse(stdout));
      rmSync(place, { recursive: true });
    }
  }
  const median = (way: 'bare' | 'store', what: keyof Once) => medianOf(results[way].map((one) => one[what]));
  const seconds = median('store', 'ms') / 1000;
  report('ingest_rows_per_s', lines / seconds, 'rows/s', on);
  report('ingest_mb_per_s', megabytes / seconds, 'MB/s as stored on disk', on);
  report('ingest_s', seconds, 's', on);
  report('bare_s', median('bare', 'ms') / 1000, 's', on);
  report('ingest_to_bare', median('store', 'ms') / median('bare', 'ms'), 'ratio of medians', {
    ...on,
    rounds,
  });
  report('ingest_to_bare_cpu', median('store', 'cpuMs') / median('bare', 'cpuMs'), 'ratio of medians', on);
  report('ingest_peak_memory_mb', Math.max(...results.store.map(({ peakMb }) => peakMb)), 'MiB', on);
  report('bare_peak_memory_mb', Math.max(...results.bare.map(({ peakMb }) => peakMb)), 'MiB', on);
}

async function sizeOf(path: string): Promise<{ lines: number; megabytes: number }> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  const counted = await connection.runAndReadAll(
    `SELECT count(*)::DOUBLE FROM read_csv('${path}', header = false, all_varchar = true)`,
  );
  connection.closeSync();
  instance.closeSync();
  return { lines: counted.getRows()[0][0] as number, megabytes: statSync(path).size / 1e6 };
}
