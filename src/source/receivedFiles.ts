import { lstat, mkdir, mkdtemp, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { ConflictError, InvalidInputError, SourceFailedError } from '../errors.ts';
import { isStationList, parseStationList } from './stationList.ts';
import { readUnpacked } from './weatherFile.ts';

/** Age from which what an import left behind, having been killed, is swept away. [ms] */
const STALE_MS = 24 * 3600 * 1000;
const LISTS = 'station-lists';

interface Limits {
  readonly mostBytes: number;
  readonly signal: AbortSignal;
}

/** A folder for files that were sent: each alone in a folder of its own, station lists kept. */
export function createReceivedFiles(folder: string) {
  return {
    /**
     * Writes a body to a file, never more of it than allowed.
     * @throws {InvalidInputError} FILE_TOO_LARGE
     * @throws {ConflictError} IMPORT_STOPPED
     * @throws {SourceFailedError} FILE_DAMAGED for a station list that is none
     */
    async receive(name: string, body: ReadableStream<Uint8Array>, limits: Limits) {
      await sweep(folder);
      await mkdir(folder, { recursive: true });
      if ((await lstat(folder)).isSymbolicLink()) throw leadsElsewhere(folder);
      const own = await mkdtemp(join(folder, 'file-'));
      const remove = () => rm(own, { recursive: true, force: true });
      const path = join(own, name);
      try {
        await pour(body, path, name, limits);
        if (!isStationList(name)) return { path, isStationList: false, remove };
        parseStationList(await readUnpacked(path), name);
        await mkdir(join(folder, LISTS), { recursive: true });
        await rename(path, join(folder, LISTS, name));
        await remove();
        return { path: join(folder, LISTS, name), isStationList: true, remove: async () => undefined };
      } catch (error) {
        await remove();
        throw error;
      }
    },
    /** Station lists that were kept. */
    async stationLists(): Promise<string[]> {
      try {
        return (await readdir(join(folder, LISTS))).sort().map((name) => join(folder, LISTS, name));
      } catch {
        return [];
      }
    },
  };
}

async function pour(
  body: ReadableStream<Uint8Array>,
  path: string,
  name: string,
  { mostBytes, signal }: Limits,
): Promise<void> {
  const file = await open(path, 'w');
  const reader = body.getReader();
  try {
    for (let bytes = 0; ; ) {
      const { done, value } = await reader.read();
      if (signal.aborted) throw stopped(name);
      if (done) return;
      bytes += value.length;
      if (bytes > mostBytes) throw tooLarge(name, mostBytes);
      await file.appendFile(value);
    }
  } finally {
    await reader.cancel().catch(() => undefined);
    await file.close();
  }
}

/** Takes away folders that an import left behind long ago. */
async function sweep(folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names.filter((one) => one.startsWith('file-'))) {
    const { mtimeMs } = await stat(join(folder, name));
    if (Date.now() - mtimeMs > STALE_MS) await rm(join(folder, name), { recursive: true, force: true });
  }
}

const tooLarge = (name: string, mostBytes: number) =>
  new InvalidInputError('FILE_TOO_LARGE', `${name} is larger than ${Math.round(mostBytes / 1e6)} MB.`, {
    hint: 'Import it with “drywake weather import”, which has no such limit.',
  });

const leadsElsewhere = (folder: string) =>
  new SourceFailedError('FOLDER_ELSEWHERE', `The folder ${folder} is a link that leads elsewhere.`, {
    hint: 'Files that are sent are kept in the data folder alone; take the link away.',
  });

const stopped = (name: string) =>
  new ConflictError('IMPORT_STOPPED', `${name} was stopped before it was here whole.`, {
    hint: 'Nothing of it was kept; send it again when you want it.',
  });
