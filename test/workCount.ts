import { Session } from 'node:inspector/promises';
import { setFlagsFromString } from 'node:v8';

// Optimised code counts nothing, and neither does what ran before the counting began; hence here, and for good.
for (const flag of ['--no-opt', '--no-maglev', '--no-sparkplug']) setFlagsFromString(flag);
const session = new Session();
session.connect();
await session.post('Profiler.enable');
await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });

/** Entries into functions and blocks below src/ since the last look. */
async function entries(): Promise<number> {
  const { result } = await session.post('Profiler.takePreciseCoverage');
  return result
    .filter(({ url }) => url.includes('/src/'))
    .flatMap(({ functions }) => functions.flatMap(({ ranges }) => ranges))
    .reduce((sum, { count }) => sum + count, 0);
}

/**
 * How often functions and blocks of the program's own sources are entered while some work is done: a count, the same on
 * every machine. What the runtime does by itself, such as copying an array, is not in it.
 */
export async function countWork(work: () => Promise<unknown>): Promise<number> {
  await entries();
  await work();
  return entries();
}
