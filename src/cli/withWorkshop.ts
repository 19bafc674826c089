import type { Workshop } from '../app/workshop.ts';
import type { CliDeps } from './command.ts';

/** Pieces of work from which on workers are worth their start. */
const WORTH_IT = 400;

/** Runs work with worker threads where there is enough of it, or where their number was asked for; closes them after. */
export async function withWorkshop<T>(
  deps: CliDeps,
  pieces: number,
  workers: number | undefined,
  work: (workshop: Workshop | undefined) => Promise<T>,
): Promise<T> {
  if (workers === 0 || (workers === undefined && pieces < WORTH_IT)) return work(undefined);
  const workshop = await deps.workshop(workers);
  try {
    return await work(workshop);
  } finally {
    await workshop.close();
  }
}
