import { workerData } from 'node:worker_threads';
import { doTask } from '../app/doTask.ts';
import { keepClimates } from '../app/keptClimates.ts';
import type { WorkTask } from '../app/workshop.ts';
import type { Catalogue } from '../schema/catalogue.ts';

const { catalogue } = workerData as { readonly catalogue: Catalogue };
const kept = keepClimates();

/** What a worker thread does with each task that it is handed. */
export default function work(task: WorkTask): ReturnType<typeof doTask> {
  return doTask(task, catalogue, kept);
}
