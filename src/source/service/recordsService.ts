import { readFile } from 'node:fs/promises';
import { DrywakeError, MissingDataError, SourceFailedError } from '../../errors.ts';
import type { StationWish } from '../../schema/stationWish.ts';
import { nearestIds } from '../nearestIds.ts';
import { parseStationList } from '../stationList.ts';
import { asTheyCome } from './asTheyCome.ts';
import { type Downloaded, downloadFile } from './downloadFile.ts';
import { holdFolder } from './holdFolder.ts';
import { PoliteQueue } from './politeQueue.ts';
import { RecordsFolder } from './recordsFolder.ts';
import { selectStations } from './selectStations.ts';
import {
  INVENTORY_FILE,
  type ServiceFile,
  STATION_LIST_FILE,
  stationFile,
  yearFile,
} from './serviceFiles.ts';
import { type GivenServiceOptions, serviceOptions } from './serviceOptions.ts';
import { FETCH_STOPPED, notThere, SERVICE_UNREACHABLE } from './serviceRefusals.ts';

/** What became of one file asked for. */
export interface FetchedFile {
  /** Station id or year. */
  readonly title: string;
  /** Where it lies; null where it could not be had. */
  readonly path: string | null;
  /** Whether an earlier copy still holds, so that nothing was sent. */
  readonly unchanged: boolean;
  /** Why it could not be had; null where it could. */
  readonly problem: DrywakeError | null;
}

/** How a call may be watched and stopped. */
export interface FetchControl {
  readonly signal?: AbortSignal;
  /** Told of every piece that arrives. [B] */
  onBytes?(bytes: number): void;
}

/** A client of the public service of daily records. It sends nothing unless one of these is called. */
export interface RecordsService {
  /** Address that everything is taken from. */
  readonly address: string;
  /**
   * Holds the folder of fetched records until the function that it gives is called.
   * @throws {ConflictError} FETCH_RUNNING where another fetch holds it
   */
  hold(): Promise<() => Promise<void>>;
  /** Path of the station list, fetched anew where the service has a newer one. Throws as downloadFile does. */
  stationList(control?: FetchControl): Promise<string>;
  /** Ids that the wish selects by the service's lists. Throws as downloadFile and selectStations do. */
  select(wish: StationWish, control?: FetchControl): Promise<string[]>;
  /**
   * Refuses ids that the station list does not hold.
   * @throws {MissingDataError} STATION_UNKNOWN
   */
  checkIds(ids: readonly string[], control?: FetchControl): Promise<void>;
  /**
   * Fetches the records of stations and whole years. Gives the files as they come, all that are ready at a time. One
   * that fails does not stop the others, unless the service cannot be reached at all or the signal is given.
   */
  fetch(
    wanted: { readonly ids: readonly string[]; readonly years: readonly number[] },
    control?: FetchControl,
  ): AsyncGenerator<readonly FetchedFile[], void, undefined>;
}

/**
 * A client that keeps what it fetches in a folder.
 * @throws {InvalidInputError} RECORDS_ADDRESS_INVALID
 */
export function createRecordsService(given: GivenServiceOptions): RecordsService {
  const options = serviceOptions(given);
  const folder = new RecordsFolder(options.folder);
  const queue = new PoliteQueue(options);
  /** Which of a packed file's places held the last one; the next is looked for there first. */
  let lastPlace = 0;

  const bring = ({ title, places }: ServiceFile, { signal, onBytes }: FetchControl) =>
    queue.run(async () => {
      const likeliest = places[lastPlace] ?? places[0];
      const inOrder = [likeliest, ...places.filter((place) => place !== likeliest)];
      const found = await downloadFile(
        { title, places: inOrder },
        { folder, queue, options, onBytes: onBytes ?? (() => undefined), ...(signal && { signal }) },
      );
      // A station may have the large fixed-width file alone, which says nothing of the others.
      if (found.place.endsWith('.gz')) lastPlace = places.indexOf(found.place);
      return found;
    });

  const lists = new Map<string, Promise<Downloaded>>();
  /** A list, asked for once while the client lives. */
  const listPath = async (file: ServiceFile, control: FetchControl): Promise<string> => {
    const list = lists.get(file.title) ?? fsRefusals(bring(file, control));
    lists.set(file.title, list);
    try {
      return (await list).path;
    } catch (error) {
      lists.delete(file.title);
      throw error;
    }
  };
  const listBytes = async (file: ServiceFile, control: FetchControl) =>
    readFile(await listPath(file, control));

  async function fetchOne(file: ServiceFile, control: FetchControl): Promise<FetchedFile> {
    const { title } = file;
    try {
      const { path, unchanged } = await fsRefusals(bring(file, control));
      return { title, path, unchanged, problem: null };
    } catch (error) {
      if (!(error instanceof DrywakeError)) throw error;
      const problem = error.code === 'RECORD_NOT_FOUND' ? await withNearest(title, control, error) : error;
      return { title, path: null, unchanged: false, problem };
    }
  }

  /** The refusal with the ids that look like the one asked for, where the list is here. */
  async function withNearest(id: string, control: FetchControl, plain: DrywakeError): Promise<DrywakeError> {
    if (/^\d{4}$/.test(id)) return plain;
    try {
      const known = parseStationList(await listBytes(STATION_LIST_FILE, control), STATION_LIST_FILE.title);
      known.delete(id);
      const nearest = nearestIds(id, [...known.keys()]);
      return notThere(id, nearest);
    } catch {
      return plain;
    }
  }

  return {
    hold: () => holdFolder(options.folder),
    address: options.address,
    stationList: (control = {}) => listPath(STATION_LIST_FILE, control),
    async select(wish, control = {}) {
      const stations = await listBytes(STATION_LIST_FILE, control);
      return selectStations({ stations, inventory: await listBytes(INVENTORY_FILE, control) }, wish);
    },
    async checkIds(ids, control = {}) {
      const known = parseStationList(await listBytes(STATION_LIST_FILE, control), STATION_LIST_FILE.title);
      const unknown = ids.find((id) => !known.has(id));
      if (unknown === undefined) return;
      const nearest = nearestIds(unknown, [...known.keys()]);
      throw new MissingDataError('STATION_UNKNOWN', `The service lists no station "${unknown}".`, {
        hint: nearest.length === 0 ? 'Its list is empty.' : `The nearest ids are ${nearest.join(', ')}.`,
        details: { stationId: unknown, nearest },
      });
    },
    async *fetch({ ids, years }, control = {}) {
      const halt = new AbortController();
      const signal = control.signal ? AbortSignal.any([control.signal, halt.signal]) : halt.signal;
      const files = [...ids.map(stationFile), ...years.map(yearFile)];
      const work = files.map(async (file): Promise<FetchedFile | null> => {
        if (signal.aborted) return null;
        const fetched = await fetchOne(file, { ...control, signal });
        const code = fetched.problem?.code;
        // Once the service is out of reach for one file, asking for the others would only say so again.
        if (code === FETCH_STOPPED || (code === SERVICE_UNREACHABLE && halt.signal.aborted)) return null;
        if (code === SERVICE_UNREACHABLE) halt.abort();
        return fetched;
      });
      try {
        yield* asTheyCome(work);
      } finally {
        halt.abort();
        await Promise.allSettled(work);
      }
    },
  };
}

/** Names what a folder or disk refused in a sentence of ours. */
async function fsRefusals<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    const { code, syscall, path = '' } = error as NodeJS.ErrnoException;
    if (error instanceof DrywakeError || code === undefined || syscall === undefined) throw error;
    throw new SourceFailedError(
      'RECORDS_UNWRITABLE',
      `The fetched file cannot be kept (${code} at ${syscall}).`,
      {
        hint: 'Check that the data folder may be written and that the disk has room.',
        details: { code, path },
        cause: error,
      },
    );
  }
}
