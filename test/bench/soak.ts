import { readdirSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { type Asked, load, question, share, watchMemory, withServer } from './http.ts';
import { medianOf, report } from './report.ts';
import { sizesOf } from './sizes.ts';
import { judgeSoak, type SoakLook, type SoakSums } from './soakVerdict.ts';
import type { Trend } from './trend.ts';

/** Longer than either side keeps an unused connection. [ms] */
const IDLE_MS = 15_000;

/** Looks below which there is no trend. */
const FEWEST_LOOKS = 3;
/** Fields of a large farm, kept first and then changed by turns. */
const FIELDS = 300;
const NEW = { 'if-none-match': '*' };
/** Changes that come first: below what one client may ask. [1/s] */
const CHANGES_PER_SECOND = 150;

/** Changes of fields by turns, each in the place of the version that was kept last; the first of each field keeps it. */
function changesOfFields() {
  const versions = Array.from({ length: FIELDS }, () => 0);
  let [made, kept] = [0, 0];
  const change = (): Asked => {
    const field = made++ % FIELDS;
    const version = versions[field];
    const id = `soak-${field}`;
    return {
      path: `/api/fields/${id}`,
      body: { id, farm: 'Soak (invented)', name: id, station: 'demo-invented', note: String(version) },
      method: 'PUT',
      headers: version === 0 ? NEW : { 'if-match': `"${version}"` },
      answered(done) {
        if (!done) return;
        versions[field]++;
        kept++;
      },
    };
  };
  return { change, kept: () => kept };
}

/** Mixed load: questions by turns, of a hundred requests one a change, nine the health and ten the stations. */
const mixed =
  (change: () => Asked) =>
  (n: number): Asked => {
    if (n % 100 === 3) return change();
    if (n % 10 === 3) return { path: '/api/health', body: {}, method: 'GET' };
    if (n % 10 === 7) return { path: '/api/stations', body: {}, method: 'GET' };
    return question(n);
  };

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

/** Asks as fast as answers come, piece by piece, until so many have come. @returns answers a second */
async function capacity(
  address: string,
  answers: number,
  pieceSeconds: number,
  change: () => Asked,
): Promise<number> {
  const begin = performance.now();
  for (let come = 0; ; ) {
    come += (await load(address, pieceSeconds, null, mixed(change))).times.length;
    if (come >= answers) return (come * 1000) / (performance.now() - begin);
  }
}

/**
 * Ten minutes of mixed load at half of what the built program carries on this machine: memory, handles, times and errors,
 * and whether they stay as they are; ends with 1 where they do not. First come many changes of fields, then full load, until
 * what is bounded is as full as such work makes it: the database's buffers (256 MB at most), sums (96 MB), seasons (8),
 * climates (24), and the runtime's own heap.
 */
export async function benchSoak(argv: string[]): Promise<void> {
  const sizes = sizesOf(argv, {
    minutes: { full: 10, small: 0.1 },
    // After each piece the server is looked at.
    pieceSeconds: { full: 20, small: 1 },
    warmChanges: { full: 3300, small: 300 },
    warmAnswers: { full: 3000, small: 30 },
  });
  const [minutes, pieceSeconds] = [Number(sizes.minutes), Number(sizes.pieceSeconds)];
  await withServer(async (address, pid) => {
    const { change, kept } = changesOfFields();
    while (kept() < Number(sizes.warmChanges)) await load(address, 1, CHANGES_PER_SECOND, change);
    const full = await capacity(address, Number(sizes.warmAnswers), pieceSeconds, change);
    const handlesBefore = await idleHandles(pid);
    const looks: SoakLook[] = [];
    const begin = performance.now();
    let [failed, answered] = [0, 0];
    while (performance.now() - begin < minutes * 60_000 || looks.length < FEWEST_LOOKS) {
      const memory = watchMemory(pid);
      const own = monitorEventLoopDelay({ resolution: 5 });
      own.enable();
      const piece = await load(address, pieceSeconds, full / 2, mixed(change));
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
