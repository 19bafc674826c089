import { setTimeout as pause } from 'node:timers/promises';
import { DrywakeError } from '../errors.ts';

const FIRST_PAUSE_MS = 20;
const LONGEST_PAUSE_MS = 250;

/**
 * Tries again, for a while, what fails because somebody else holds the store.
 * @param waitMs how long to go on trying [ms]
 * @throws the last refusal, STORE_BUSY, where the time is up
 */
export async function waitForFile<T>(waitMs: number, open: () => Promise<T>): Promise<T> {
  const until = performance.now() + waitMs;
  for (let pauseMs = FIRST_PAUSE_MS; ; pauseMs = Math.min(2 * pauseMs, LONGEST_PAUSE_MS)) {
    try {
      return await open();
    } catch (error) {
      const busy = error instanceof DrywakeError && error.code === 'STORE_BUSY';
      if (!busy || performance.now() + pauseMs > until) throw error;
    }
    await pause(pauseMs);
  }
}
