import type { ServiceClock } from './serviceClock.ts';

/** Bounds of what is asked of a service at a time. */
export interface QueueLimits {
  readonly mostAtOnce: number;
  /** Least time from one request's start to the next one's. [ms] */
  readonly spacingMs: number;
  readonly clock: ServiceClock;
}

/** Lets only so many pieces of work run at a time, and spaces the requests among them. */
export class PoliteQueue {
  private running = 0;
  private readonly waiting: (() => void)[] = [];
  private nextStart = 0;

  constructor(private readonly limits: QueueLimits) {}

  /** Runs the work when there is room for it; in the order of asking. */
  async run<T>(work: () => Promise<T>): Promise<T> {
    if (this.running >= this.limits.mostAtOnce) {
      await new Promise<void>((resume) => this.waiting.push(resume));
    } else {
      this.running++;
    }
    try {
      return await work();
    } finally {
      // The place goes straight to the next in line, so that nobody slips in between.
      const next = this.waiting.shift();
      if (next === undefined) this.running--;
      else next();
    }
  }

  /** Resolves when the next request may start. */
  async turn(signal?: AbortSignal): Promise<void> {
    const { clock, spacingMs } = this.limits;
    const now = clock.now();
    const start = Math.max(now, this.nextStart);
    this.nextStart = start + spacingMs;
    if (start > now) await clock.wait(start - now, signal);
  }

  /** Keeps all requests back for that time, as a service that has enough of us asks for. [ms] */
  holdOff(ms: number): void {
    this.nextStart = Math.max(this.nextStart, this.limits.clock.now() + ms);
  }
}
