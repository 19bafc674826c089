import { setTimeout as sleep } from 'node:timers/promises';

/** Time as the service client sees it; tests put their own in its place. */
export interface ServiceClock {
  /** Milliseconds since 1970-01-01 UTC. */
  now(): number;
  /** Resolves after that time; rejects when the signal is given. [ms] */
  wait(ms: number, signal?: AbortSignal): Promise<void>;
}

/** The computer's own clock. */
export const realClock: ServiceClock = {
  now: () => Date.now(),
  wait: (ms, signal) => sleep(ms, undefined, { signal }),
};
