import { readdirSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type Asked, load, question, share, withServer } from './http.ts';
import { report } from './report.ts';

/** Longest piece of the load after which the server is looked at. [s] */
const PIECE_SECONDS = 20;

interface Look {
  readonly minutes: number;
  readonly memoryMb: number;
  readonly handles: number;
  readonly p99Ms: number;
}

/** Mixed load: questions by turns, every tenth a new field, every tenth the list of all that is kept or the health. */
function mixed(run: number) {
  return (n: number): Asked => {
    const id = `soak-${run}-${n}`;
    if (n % 10 === 3) {
      // Fields grow no further than a large farm's.
      if (n % 100 !== 3) return { path: '/api/health', body: {}, method: 'GET' };
      const record = { id, farm: 'Soak (invented)', name: id, station: 'demo-invented' };
      return { path: `/api/fields/${id}`, body: record, method: 'PUT', headers: { 'if-none-match': '*' } };
    }
    if (n % 10 === 7) return { path: '/api/stations', body: {}, method: 'GET' };
    return question(n);
  };
}

/** Memory that a process holds. [MiB] Read where the system tells it; NaN elsewhere. */
function memoryOf(pid: number): number {
  try {
    return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;
  } catch {
    return Number.NaN;
  }
}

/** Files, sockets and pipes that a process holds open. */
function handlesOf(pid: number): number {
  try {
    return readdirSync(`/proc/${pid}/fd`).length;
  } catch {
    return Number.NaN;
  }
}

/** Growth of a figure per minute, by least squares. */
function slopeOf(looks: readonly Look[], figure: (look: Look) => number): number {
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [x, y] = [mean(looks.map(({ minutes }) => minutes)), mean(looks.map(figure))];
  const above = looks.reduce((sum, look) => sum + (look.minutes - x) * (figure(look) - y), 0);
  return above / looks.reduce((sum, { minutes }) => sum + (minutes - x) ** 2, 0);
}

/**
 * Ten minutes of mixed load at half of what the built program carries on this machine: memory, handles, times and errors.
 * The first minute warms up and counts for errors only.
 */
export async function benchSoak(argv: string[]): Promise<void> {
  const { values } = parseArgs({ args: argv, options: { minutes: { type: 'string', default: '10' } } });
  const minutes = Number(values.minutes);
  await withServer(async (address, pid) => {
    const full = await load(address, Math.min(PIECE_SECONDS, minutes * 10), null, mixed(0));
    const perSecond = full.times.length / Math.min(PIECE_SECONDS, minutes * 10) / 2;
    const looks: Look[] = [];
    const begin = performance.now();
    let [failed, answered] = [0, 0];
    for (let run = 1; performance.now() - begin < minutes * 60_000; run++) {
      const piece = await load(address, Math.min(PIECE_SECONDS, minutes * 6), perSecond, mixed(run));
      failed += piece.failed;
      answered += piece.times.length;
      looks.push({
        minutes: (performance.now() - begin) / 60_000,
        memoryMb: memoryOf(pid),
        handles: handlesOf(pid),
        p99Ms: share(piece.times, 0.99),
      });
    }
    const warm = looks.filter((look) => look.minutes > Math.min(1, minutes / 4));
    const half = (part: 0 | 1) =>
      warm.slice(Math.floor((part * warm.length) / 2), Math.ceil(((part + 1) * warm.length) / 2));
    const meanP99 = (some: readonly Look[]) => some.reduce((sum, { p99Ms }) => sum + p99Ms, 0) / some.length;
    const on = { minutes, perSecond: Number(perSecond.toPrecision(3)) };
    report('soak_answered', answered, 'requests', { ...on, failed });
    report('soak_memory_mb', warm[warm.length - 1].memoryMb, 'MiB', { first: Math.round(warm[0].memoryMb) });
    report(
      'soak_memory_slope',
      slopeOf(warm, ({ memoryMb }) => memoryMb),
      'MiB/min',
      on,
    );
    report('soak_handles', warm[warm.length - 1].handles, 'handles', { first: warm[0].handles });
    report('soak_p99_first_half_ms', meanP99(half(0)), 'ms', on);
    report('soak_p99_second_half_ms', meanP99(half(1)), 'ms', on);
  });
}
