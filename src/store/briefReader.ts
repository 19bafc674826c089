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
/** How long the file is held for reads that wait for each other; opening it takes some 30 ms. [ms] */
const HOLDS_MS = 250;

/** A read that waits for its turn. */
interface WaitingRead {
  /** Does the work and says how it ended, which is passed on once it may be. */
  run(store: WeatherStore): Promise<() => void>;
  refuse(error: unknown): void;
  readonly waitMs: number;
}

/**
 * A reader of the store in a data folder; reads queue up, so that the file is open once at a time, and those that wait
 * already when another ends share its opening for a while.
 * @param waitMs how long a read waits for an import to end [ms]
 */
export function createBriefReader(folder: string, waitMs: number = READER_WAITS_MS): BriefReader {
  const waiting: WaitingRead[] = [];
  let atWork = false;
  let seen = '';
  const work = async (first: WaitingRead): Promise<void> => {
    const store = await openWeatherStore(folder, { mode: 'read', waitMs: first.waitMs });
    const until = performance.now() + HOLDS_MS;
    let tell = await first.run(store);
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      if (performance.now() > until) {
        waiting.unshift(next);
        break;
      }
      tell();
      tell = await next.run(store);
    }
    // Who hears of the end may count on a file that nobody holds.
    try {
      await store.close();
    } finally {
      tell();
    }
  };
  const workOff = async (): Promise<void> => {
    if (atWork) return;
    atWork = true;
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      await work(next).catch(next.refuse);
    }
    atWork = false;
  };
  const use = <T>(read: (store: WeatherStore) => Promise<T>, wait: number = waitMs): Promise<T> =>
    new Promise<T>((resolve, reject) => {
      const run = (store: WeatherStore) =>
        read(store).then(
          (value) => () => resolve(value),
          (error: unknown) => () => reject(error),
        );
      waiting.push({ run, refuse: reject, waitMs: wait });
      void workOff();
    });
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
