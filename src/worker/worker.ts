import { workerData } from 'node:worker_threads';
import { doTask } from '../app/doTask.ts';
import { keepClimates } from '../app/keptClimates.ts';
import type { WorkTask } from '../app/workshop.ts';
import { loadCatalogue } from '../catalogue/loadCatalogue.ts';
import { readDataFolder } from '../catalogue/readDataFolder.ts';
import type { Catalogue } from '../schema/catalogue.ts';

let catalogue: Catalogue | undefined;
const kept = keepClimates();

/** What a worker thread does with each task that it is handed; it reads the catalogue once. */
export default function work(task: WorkTask): ReturnType<typeof doTask> {
  catalogue ??= loadCatalogue(readDataFolder(workerData.dataFolder));
  return doTask(task, catalogue, kept);
}
