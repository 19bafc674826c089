import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { medianOf, report } from './report.ts';
import { sizesOf } from './sizes.ts';

const CONNECTIONS = 32;
const STATION = 'demo-invented';

export interface Asked {
  readonly path: string;
  readonly body: object;
  readonly method?: 'POST' | 'PUT' | 'GET';
  readonly headers?: Readonly<Record<string, string>>;
  /** Told once it is answered, whether it was done. */
  readonly answered?: (done: boolean) => void;
}

/** Questions by turns, 90 odds, 8 comparisons and 2 grids of 100, each another question. */
export function question(n: number): Asked {
  const day = (k: number) => String(1 + (k % 28)).padStart(2, '0');
  const season = { station: STATION, appliedOn: `2026-08-${day(n)}` };
  const plantOn = `2027-05-${day(n * 5)}`;
  if (n % 50 === 49) {
    return {
      path: '/api/crops',
      body: { ...season, residual: 'flumioxazin', plantFrom: plantOn, plantTo: '2027-09-30', stepDays: 7 },
    };
  }
  if (n % 25 === 12 || n % 25 === 4)
    return { path: '/api/compare', body: { ...season, crop: 'lentil', plantOn } };
  const asOf = n % 2 === 0 ? { asOf: '2026-09-15' } : {};
  return {
    path: '/api/odds',
    body: { ...season, residual: 'flumioxazin', crop: 'lentil', plantOn, ...asOf },
  };
}

/** Times of answers over loopback, from the built program: at full load, then at half of what it carried. */
export async function benchHttp(argv: string[]): Promise<void> {
  const sizes = sizesOf(argv, { seconds: { full: 20, small: 1 }, 'half-seconds': { full: 20, small: 1 } });
  const seconds = Number(sizes.seconds);
  const halfSeconds = Number(sizes['half-seconds']);
  await withServer(async (address, pid) => {
    await load(address, Math.min(3, seconds), null);
    const full = await load(address, seconds, null);
    report('http_rps', full.times.length / seconds, 'requests/s', {
      connections: CONNECTIONS,
      seconds,
      failed: full.failed,
    });
    report('http_full_p50_ms', share(full.times, 0.5), 'ms');
    report('http_full_p99_ms', share(full.times, 0.99), 'ms');
    const memory = watchMemory(pid);
    const own = monitorEventLoopDelay({ resolution: 5 });
    own.enable();
    const half = await load(address, halfSeconds, full.times.length / seconds / 2);
    reportMemory(memory(), halfSeconds);
    // What the asking process, which does next to nothing, was itself kept waiting: other work on the machine.
    report('http_asker_kept_waiting_p99_ms', own.percentile(99) / 1e6, 'ms');
    report('http_asker_kept_waiting_most_ms', own.max / 1e6, 'ms');
    report('http_p50_ms', share(half.times, 0.5), 'ms', { at: 'half of http_rps', failed: half.failed });
    report('http_p99_ms', share(half.times, 0.99), 'ms', { at: 'half of http_rps', failed: half.failed });
  });
}

/** Runs the built program as a server in a process of its own while some work is done. */
export async function withServer(
  work: (address: string, process: number, home: string) => Promise<void>,
): Promise<void> {
  const home = mkdtempSync(join(tmpdir(), 'drywake-bench-'));
  const program = fileURLToPath(new URL('../../dist/bin/drywake.js', import.meta.url));
  const server = spawn(process.execPath, [program, 'serve', '--port', '0'], {
    env: { ...process.env, DRYWAKE_HOME: home },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    const address = await new Promise<string>((resolve, reject) => {
      server.stdout.on('data', (text) => {
        const found = /http:\/\/\S+/.exec(String(text));
        if (found) resolve(found[0].replace(/\/$/, ''));
      });
      server.on('exit', () => reject(new Error('The server ended. Build the program first.')));
    });
    await work(address, server.pid ?? 0, home);
  } finally {
    server.kill('SIGTERM');
    rmSync(home, { recursive: true, force: true });
  }
}

/** Memory of a process at once and then each second, until asked for it, where the system tells it. [MiB] */
export function watchMemory(pid: number): () => number[] {
  const samples: number[] = [];
  const sample = () => {
    const path = `/proc/${pid}/status`;
    if (!existsSync(path)) return;
    const found = /VmRSS:\s+(\d+) kB/.exec(readFileSync(path, 'utf8'));
    if (found) samples.push(Number(found[1]) / 1024);
  };
  sample();
  const timer = setInterval(sample, 1000);
  return () => {
    clearInterval(timer);
    return samples;
  };
}

/** Memory in the first and the last fifth of the load: flat where they are alike. */
function reportMemory(samples: readonly number[], seconds: number): void {
  const fifth = Math.floor(samples.length / 5);
  if (fifth === 0) return;
  const on = { at: 'half of http_rps', seconds };
  report('http_memory_first_fifth_mb', medianOf(samples.slice(0, fifth)), 'MiB', on);
  report('http_memory_last_fifth_mb', medianOf(samples.slice(-fifth)), 'MiB', on);
  report('http_memory_peak_mb', Math.max(...samples), 'MiB', on);
}

export const share = (times: readonly number[], part: number): number =>
  times.toSorted((a, b) => a - b)[Math.min(times.length - 1, Math.floor(part * times.length))];

/** Asks for some seconds over a number of connections: as fast as answers come, or at a rate, counted from its beat. */
export async function load(
  address: string,
  seconds: number,
  perSecond: number | null,
  asked: (n: number) => Asked = question,
): Promise<{ times: number[]; failed: number }> {
  const times: number[] = [];
  let failed = 0;
  let next = 0;
  const begin = performance.now();
  const end = begin + seconds * 1000;
  const worker = async () => {
    while (performance.now() < end) {
      const n = next++;
      const due = perSecond === null ? performance.now() : begin + (n * 1000) / perSecond;
      if (due >= end) return;
      if (due > performance.now())
        await new Promise((resolve) => setTimeout(resolve, due - performance.now()));
      const { path, body, method = 'POST', headers, answered } = asked(n);
      const response = await fetch(`${address}${path}`, {
        method,
        ...(method === 'GET' ? {} : { body: JSON.stringify(body) }),
        headers: { 'content-type': 'application/json', ...headers },
      });
      await response.arrayBuffer();
      if (!response.ok) failed++;
      answered?.(response.ok);
      times.push(performance.now() - due);
    }
  };
  await Promise.all(Array.from({ length: CONNECTIONS }, worker));
  return { times, failed };
}
