import { type BriefReader, createBriefReader } from './briefReader.ts';
import { openWeatherStore, type WeatherStore } from './weatherStore.ts';

/** How long an import waits for readers, which hold the store for moments only. [ms] */
const WRITER_WAITS_MS = 5000;

/** The store of a server: read briefly, and held for writing only while a file is imported. */
export interface ServedStore {
  /** Reads at any time; while an import holds the store, through it. */
  readonly reader: BriefReader;
  /** @throws {ConflictError} STORE_BUSY where another program still holds the store after the wait */
  openToWrite(files: readonly string[]): Promise<WeatherStore>;
}

/** The store in a data folder, for reading and for one import at a time. */
export function createServedStore(folder: string): ServedStore {
  const brief = createBriefReader(folder);
  let writing: WeatherStore | null = null;
  return {
    reader: {
      stations: () => (writing ?? brief).stations(),
      record: (stationId) => (writing ?? brief).record(stationId),
      records: (stationIds) => (writing ?? brief).records(stationIds),
      changed: brief.changed,
    },
    async openToWrite(files) {
      const store = await openWeatherStore(folder, { mode: 'write', files, waitMs: WRITER_WAITS_MS });
      writing = store;
      return {
        ...store,
        close() {
          writing = null;
          return store.close();
        },
      };
    },
  };
}
