import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs, promisify } from 'node:util';
import { generateStore } from './generatedStore.ts';
import { report } from './report.ts';

const run = promisify(execFile);
const fileOf = (name: string) => fileURLToPath(new URL(name, import.meta.url));

interface Once {
  readonly ms: number;
  readonly answered: number;
  readonly cpuMs: number;
  readonly peakMb: number;
}

/** A region of many generated stations and a long list of fields, each in a process of its own. */
export async function benchMany(argv: string[]): Promise<void> {
  const { values } = parseArgs({
    args: argv,
    options: {
      stations: { type: 'string', default: '10000' },
      years: { type: 'string', default: '30' },
      rows: { type: 'string', default: '10000' },
      workers: { type: 'string', default: '2' },
      folder: { type: 'string', default: tmpdir() },
    },
  });
  const folder = mkdtempSync(join(values.folder, 'drywake-bench-'));
  const once = async (name: string, ...args: string[]): Promise<Once> =>
    JSON.parse((await run(process.execPath, [...process.execArgv, fileOf(name), folder, ...args])).stdout);
  try {
    const { stations, years, rows, workers } = values;
    await generateStore(folder, Number(stations), Number(years));
    const on = { stations: Number(stations), years: Number(years), workers: Number(workers) };
    const region = await once('regionOnce.ts', workers);
    report('region_10k_s', region.ms / 1000, 's', { ...on, answered: region.answered });
    report('region_10k_cpu_s', region.cpuMs / 1000, 's', on);
    report('region_10k_peak_memory_mb', region.peakMb, 'MiB', on);
    const list = await once('batchOnce.ts', rows, '50', workers);
    const fields = { rows: Number(rows), stations: 50, workers: Number(workers) };
    report('batch_10k_s', list.ms / 1000, 's', { ...fields, answered: list.answered });
    report('batch_10k_cpu_s', list.cpuMs / 1000, 's', fields);
    report('batch_10k_peak_memory_mb', list.peakMb, 'MiB', fields);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
