import { readdirSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { type Asked, load, question, share, watchMemory, withServer } from './http.ts';
import { medianOf, report } from './report.ts';
import { sizesOf } from './sizes.ts';
import { judgeSoak, type SoakLook, type SoakSums } from './soakVerdict.ts';
import type { Trend } from './trend.ts';

/** Pieces of the load, after each of which the server is looked at. [s] */
const PIECE_SECONDS = 20;
/** Pieces of full load, at whose ends the answers are counted. [s] */
const FULL_SECONDS = 10;
/** Longer than either side keeps an unused connection. [ms] */
const IDLE_MS = 15_000;

/** Mixed load: questions by turns, every tenth a new field, every tenth the list of all that is kept or the health. */
function mixed(run: string) {
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

/** Files, sockets and pipes that a process holds open. */
function handlesOf(pid: number): number {
  try {
    return readdirSync(`/proc/${pid}/fd`).length;
  } catch {
    return Number.NaN;
  }
}

/** Handles while nobody asks: connections that were kept open for a next question are closed by then. */
async function idleHandles(pid: number): Promise<number> {
  await pause(IDLE_MS);
  return handlesOf(pid);
}

/** Asks as fast as answers come until so many have come. @returns answers a second */
async function capacity(address: string, answers: number): Promise<number> {
  const begin = performance.now();
  for (let run = 0, come = 0; ; run++) {
    come += (await load(address, FULL_SECONDS, null, mixed(`full-${run}`))).times.length;
    if (come >= answers) return (come * 1000) / (performance.now() - begin);
  }
}

/**
 * Ten minutes of mixed load at half of what the built program carries on this machine: memory, handles, times and errors,
 * and whether they stay as they are; ends with 1 where they do not. Full load comes first, until what is remembered (24
 * climates, 8 seasons, 96 MB of sums) and the runtime's own heap are as full as such questions make them.
 */
export async function benchSoak(argv: string[]): Promise<void> {
  const sizes = sizesOf(argv, {
    minutes: { full: 10, small: 0.05 },
    warmAnswers: { full: 3000, small: 30 },
  });
  const minutes = Number(sizes.minutes);
  await withServer(async (address, pid) => {
    const full = await capacity(address, Number(sizes.warmAnswers));
    const handlesBefore = await idleHandles(pid);
    const looks: SoakLook[] = [];
    const begin = performance.now();
    let [failed, answered] = [0, 0];
    for (let run = 0; performance.now() - begin < minutes * 60_000; run++) {
      const memory = watchMemory(pid);
      const own = monitorEventLoopDelay({ resolution: 5 });
      own.enable();
      const piece = await load(address, PIECE_SECONDS, full / 2, mixed(`half-${run}`));
      failed += piece.failed;
      answered += piece.times.length;
      looks.push({
        minutes: (performance.now() - begin) / 60_000,
        memoryMb: medianOf(memory()),
        p99Ms: share(piece.times, 0.99),
        askerP99Ms: own.percentile(99) / 1e6,
      });
    }
    const sums = { failed, handlesBefore, handlesAfter: await idleHandles(pid) };
    report('soak_answered', answered, 'requests', { minutes, perSecond: round(full / 2), failed });
    tell(looks, sums);
  });
}

const round = (value: number): number => Number(value.toPrecision(3));

/** Median of a figure in the first half and in the second half of the looks. */
function halves(looks: readonly SoakLook[], figure: (look: SoakLook) => number): [number, number] {
  const middle = Math.floor(looks.length / 2);
  return [medianOf(looks.slice(0, middle).map(figure)), medianOf(looks.slice(middle).map(figure))];
}

function tell(looks: readonly SoakLook[], sums: SoakSums): void {
  const { memory, p99, asker, faults } = judgeSoak(looks, sums);
  const memories = looks.map(({ memoryMb }) => memoryMb);
  const slope = (name: string, trend: Trend, unit: string) =>
    report(name, trend.slope, unit, { standardError: round(trend.error) });
  const slowest = (name: string, [first, second]: [number, number]) =>
    report(name, second, 'ms, median of the second half', { firstHalf: round(first) });
  report('soak_memory_mb', memories[memories.length - 1], 'MiB', {
    first: Math.round(memories[0]),
    most: Math.round(Math.max(...memories)),
  });
  slope('soak_memory_slope', memory, 'MiB/min');
  report('soak_handles', sums.handlesAfter, 'handles', { before: sums.handlesBefore });
  slowest(
    'soak_p99_ms',
    halves(looks, ({ p99Ms }) => p99Ms),
  );
  slope('soak_p99_slope', p99, 'ms/min');
  slowest(
    'soak_asker_p99_ms',
    halves(looks, ({ askerP99Ms }) => askerP99Ms),
  );
  slope('soak_asker_slope', asker, 'ms/min');
  report('soak_faults', faults.length, 'faults', { faults });
  if (faults.length > 0) process.exitCode = 1;
}
