import { mkdir, open, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { ConflictError } from '../../errors.ts';

const LOCK_FILE = 'fetch.lock';

/**
 * Holds a folder of fetched records for one fetch alone. What a killed fetch left held is taken over.
 * @returns gives the folder back
 * @throws {ConflictError} FETCH_RUNNING where another fetch that still runs holds it
 */
export async function holdFolder(folder: string): Promise<() => Promise<void>> {
  const path = join(folder, LOCK_FILE);
  await mkdir(folder, { recursive: true });
  for (let last = false; ; last = true) {
    try {
      const file = await open(path, 'wx');
      await file.writeFile(`${process.pid}\n`);
      await file.close();
      return () => rm(path, { force: true });
    } catch (error) {
      if (!isThere(error)) throw error;
    }
    const holder = await holderOf(path);
    if (last || isRunning(holder)) throw fetchRunning(folder, path, holder);
    await rm(path, { force: true });
  }
}

const isThere = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'EEXIST';

/** Number of the process that holds the folder; NaN where its file does not say, as while it is being written. */
async function holderOf(path: string): Promise<number> {
  const text = await readFile(path, 'utf8').catch(() => '');
  return /^\d+\n$/.test(text) ? Number(text) : Number.NaN;
}

function isRunning(holder: number): boolean {
  if (Number.isNaN(holder)) return true;
  try {
    process.kill(holder, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

function fetchRunning(folder: string, path: string, holder: number): ConflictError {
  const who = Number.isNaN(holder) ? '' : ` (process ${holder})`;
  return new ConflictError('FETCH_RUNNING', `Another fetch into ${folder} is running${who}.`, {
    hint: `Wait until it has ended; what it has fetched is not fetched again. Where no fetch runs, delete ${path}.`,
    details: { folder, ...(!Number.isNaN(holder) && { process: holder }) },
  });
}
