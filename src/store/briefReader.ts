import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { StationExtent, StationRecord } from '../schema/weather.ts';
import { openWeatherStore, WEATHER_FILE, type WeatherStore } from './weatherStore.ts';

/** Reads the store and lets go of it at once, so that imports by another process find it free. */
export interface BriefReader {
  stations(): Promise<readonly StationExtent[]>;
  /** @throws {MissingDataError} STATION_UNKNOWN or STORE_EMPTY */
  record(stationId: string): Promise<StationRecord>;
  /** Tells, at most once per change, that the file has changed since it was last read. */
  changed(): Promise<boolean>;
}

/** A reader of the store in a data folder; reads queue up, so that the file is open once at a time. */
export function createBriefReader(folder: string): BriefReader {
  let last: Promise<unknown> = Promise.resolve();
  let seen = '';
  const use = <T>(work: (store: WeatherStore) => Promise<T>): Promise<T> => {
    const task = last.then(async () => {
      const store = await openWeatherStore(folder, { mode: 'read' });
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
    async changed() {
      const now = await stateOf(join(folder, WEATHER_FILE));
      const isNew = now !== seen;
      seen = now;
      return isNew;
    },
  };
}

async function stateOf(path: string): Promise<string> {
  try {
    const { mtimeMs, size } = await stat(path);
    return `${mtimeMs}:${size}`;
  } catch {
    return 'none';
  }
}
