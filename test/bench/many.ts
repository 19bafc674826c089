import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import { generateStore } from './generatedStore.ts';
import { report } from './report.ts';
import { sizesOf } from './sizes.ts';

const run = promisify(execFile);
const root = fileURLToPath(new URL('../../', import.meta.url));

/** Bundles what is timed with its worker, as the program is built: no loader works in the timed processes. */
async function bundled(): Promise<string> {
  const outdir = join(root, 'dist', 'bench');
  await build({
    absWorkingDir: root,
    entryPoints: {
      batchOnce: 'test/bench/batchOnce.ts',
      regionOnce: 'test/bench/regionOnce.ts',
      worker: 'src/worker/worker.ts',
    },
    outdir,
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    external: ['@duckdb/*', 'piscina'],
    banner: {
      js: "import { createRequire as benchRequire } from 'node:module'; const require = benchRequire(import.meta.url);",
    },
  });
  return outdir;
}

interface Once {
  readonly ms: number;
  readonly answered: number;
  readonly cpuMs: number;
  readonly peakMb: number;
}

/** A region of many generated stations and a long list of fields, each in a process of its own. */
export async function benchMany(argv: string[]): Promise<void> {
  const { stations, years, rows, workers, ...place } = sizesOf(argv, {
    stations: { full: 10_000, small: 50 },
    years: { full: 30 },
    rows: { full: 10_000, small: 50 },
    workers: { full: 2 },
    folder: { full: tmpdir() },
  });
  const folder = mkdtempSync(join(place.folder, 'drywake-bench-'));
  const programs = await bundled();
  const once = async (name: string, ...args: string[]): Promise<Once> =>
    JSON.parse((await run(process.execPath, [join(programs, name), folder, ...args])).stdout);
  try {
    await generateStore(folder, Number(stations), Number(years));
    const on = { stations: Number(stations), years: Number(years), workers: Number(workers) };
    const region = await once('regionOnce.js', workers);
    report('region_10k_s', region.ms / 1000, 's', { ...on, answered: region.answered });
    report('region_10k_cpu_s', region.cpuMs / 1000, 's', on);
    report('region_10k_peak_memory_mb', region.peakMb, 'MiB', on);
    const list = await once('batchOnce.js', rows, '50', workers);
    const fields = { rows: Number(rows), stations: 50, workers: Number(workers) };
    report('batch_10k_s', list.ms / 1000, 's', { ...fields, answered: list.answered });
    report('batch_10k_cpu_s', list.cpuMs / 1000, 's', fields);
    report('batch_10k_peak_memory_mb', list.peakMb, 'MiB', fields);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
