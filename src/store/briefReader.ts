import { statSync } from 'node:fs';
import { join } from 'node:path';
import { DrywakeError } from '../errors.ts';
import type { StationExtent, StationRecord } from '../schema/weather.ts';
import { openWeatherStore, WEATHER_FILE, type WeatherStore } from './weatherStore.ts';

/** Reads the store and lets go of it at once, so that imports by another process find it free. */
export interface BriefReader {
  /** @throws {ConflictError} STORE_BUSY where an import still holds the store after the wait */
  stations(): Promise<readonly StationExtent[]>;
  /**
   * @throws {MissingDataError} STATION_UNKNOWN or STORE_EMPTY
   * @throws {ConflictError} STORE_BUSY where an import still holds the store after the wait
   */
  record(stationId: string): Promise<StationRecord>;
  /** Several stations' records while the file is open once. @throws as record */
  records(stationIds: readonly string[]): Promise<StationRecord[]>;
  /** Tells, at most once per change, that the file has changed since it was last read and can be read again. */
  changed(): Promise<boolean>;
}

/** How long a read waits for an import to end. [ms] */
const READER_WAITS_MS = 3000;

/**
 * A reader of the store in a data folder; reads queue up, so that the file is open once at a time.
 * @param waitMs how long a read waits for an import to end [ms]
 */
export function createBriefReader(folder: string, waitMs: number = READER_WAITS_MS): BriefReader {
  let last: Promise<unknown> = Promise.resolve();
  let seen = '';
  const use = <T>(work: (store: WeatherStore) => Promise<T>, wait: number = waitMs): Promise<T> => {
    const task = last.then(async () => {
      const store = await openWeatherStore(folder, { mode: 'read', waitMs: wait });
      try {
        return await work(store);
      } finally {
        await store.close();
      }
    });
    last = task.catch(() => undefined);
    return task;
  };
  return {
    stations: () => use((store) => store.stations()),
    record: (stationId) => use((store) => store.record(stationId)),
    records: (stationIds) => use((store) => store.records(stationIds)),
    async changed() {
      const now = stateOf(join(folder, WEATHER_FILE));
      if (now === seen) return false;
      // A file that is being written holds what it held, for readers, until the writer lets go of it.
      if (await isBusy(use(async () => undefined, 0))) return false;
      seen = now;
      return true;
    },
  };
}

async function isBusy(opening: Promise<void>): Promise<boolean> {
  try {
    await opening;
    return false;
  } catch (error) {
    return error instanceof DrywakeError && error.code === 'STORE_BUSY';
  }
}

/** At once and here: by a thread of its own each question would wait for that thread's turn, seconds on a busy machine. */
function stateOf(path: string): string {
  try {
    const { mtimeMs, size } = statSync(path);
    return `${mtimeMs}:${size}`;
  } catch {
    return 'none';
  }
}
