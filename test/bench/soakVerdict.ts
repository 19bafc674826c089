import { type Trend, trendOf } from './trend.ts';

/** One look at a server under load. */
export interface SoakLook {
  /** Time since the load began. [min] */
  readonly minutes: number;
  /** Memory that the process held while the look was taken, the median of its seconds. [MiB] */
  readonly memoryMb: number;
  readonly p99Ms: number;
  /** How long the asking process, which does next to nothing, was itself kept waiting: other work on the machine. [ms] */
  readonly askerP99Ms: number;
}

/** What is looked at once. */
export interface SoakSums {
  readonly failed: number;
  /** Files, sockets and pipes that the server holds open while nobody asks, before the load and after it. */
  readonly handlesBefore: number;
  readonly handlesAfter: number;
}

/** What a soak came to. */
export interface SoakVerdict {
  /** [MiB/min] */
  readonly memory: Trend;
  /** [ms/min] */
  readonly p99: Trend;
  /** [ms/min] */
  readonly asker: Trend;
  /** What was not as it should be, in words; none where the soak is passed. */
  readonly faults: readonly string[];
}

/** Standard errors on either side of a slope. */
const SURE = 2;
/** Growth that would have to have shown itself, else the soak was too short or too restless to tell. [MiB/min] */
const MOST_UNSEEN = 2;

/**
 * Judges a soak: memory neither grows nor may have grown unseen, no handle more at the end than at the beginning, answers
 * do not become slower unless all does on that machine, none failed.
 */
export function judgeSoak(
  looks: readonly SoakLook[],
  { failed, handlesBefore, handlesAfter }: SoakSums,
): SoakVerdict {
  const trend = (figure: (look: SoakLook) => number) =>
    trendOf(looks.map((look) => ({ at: look.minutes, value: figure(look) })));
  const memory = trend(({ memoryMb }) => memoryMb);
  const p99 = trend(({ p99Ms }) => p99Ms);
  const asker = trend(({ askerP99Ms }) => askerP99Ms);
  const grows = ({ slope, error }: Trend) => slope - SURE * error > 0;
  const faults = [
    grows(memory) && 'memory grows',
    !(memory.slope + SURE * memory.error < MOST_UNSEEN) &&
      `growth of ${MOST_UNSEEN} MiB/min would not have shown`,
    !(handlesAfter <= handlesBefore) && 'handles grow',
    grows(p99) && !grows(asker) && 'answers become slower',
    failed > 0 && 'requests failed',
  ].filter((fault) => fault !== false);
  return { memory, p99, asker, faults };
}
