import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import { throwIfStopped } from '../app/stopped.ts';
import type { WorkResults, Workshop, WorkTask } from '../app/workshop.ts';
import type { Catalogue } from '../schema/catalogue.ts';

/** Time after which a worker without work ends. [ms] */
const IDLE_MS = 30_000;

/** The worker's file: built beside the program, or among the sources, which need a loader. */
function workerFile(): { filename: string; execArgv: string[] } {
  const built = fileURLToPath(new URL('./worker.js', import.meta.url));
  if (existsSync(built)) return { filename: built, execArgv: [] };
  return { filename: fileURLToPath(new URL('./worker.ts', import.meta.url)), execArgv: ['--import', 'tsx'] };
}

/**
 * Opens worker threads; they start with the first task.
 * @param catalogue copied to each worker as it starts, which takes less time than reading and checking its files again
 * @param workers how many; one for each processor where not given
 */
export function openWorkshop(catalogue: Catalogue, workers: number = availableParallelism()): Workshop {
  const pool = new Piscina({
    ...workerFile(),
    minThreads: 0,
    maxThreads: workers,
    idleTimeout: IDLE_MS,
    workerData: { catalogue },
  });
  return {
    workers,
    async run<Kind extends WorkTask['kind']>(
      task: Extract<WorkTask, { kind: Kind }>,
      signal?: AbortSignal,
    ): Promise<WorkResults[Kind]> {
      throwIfStopped(signal);
      try {
        return await pool.run(task, { signal, transferList: handedOver(task) });
      } catch (error) {
        throwIfStopped(signal);
        throw error;
      }
    },
    close: () => pool.destroy(),
  };
}

/** Columns of a region's records, which nobody here needs again: moved, not copied. */
function handedOver(task: WorkTask): ArrayBuffer[] {
  if (task.kind !== 'region') return [];
  const columns = task.stations.flatMap(({ record }) => [
    record.rainTenthsMm,
    record.maxTempTenthsC,
    record.minTempTenthsC,
    record.multiDayRainTenthsMm,
    record.multiDayCount,
  ]);
  return [...new Set(columns.map(({ buffer }) => buffer as ArrayBuffer))];
}
