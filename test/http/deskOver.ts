import { createClimateCache } from '../../src/app/climateCache.ts';
import { createFieldsDesk, type FieldsStore } from '../../src/app/fieldsDesk.ts';
import { labelBookOf } from '../../src/app/labelBook.ts';
import type { WeatherReader } from '../../src/app/weatherReader.ts';
import type { FetchSummary } from '../../src/schema/fetchSummary.ts';
import { keepFile } from '../../src/store/keepFile.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { tickingClock } from '../store/openFields.ts';

const fetchNothing = (): Promise<FetchSummary> => Promise.reject(new Error('This test fetches nothing.'));

/** What the routes need for fields, over an open store in a folder. */
export function deskOver(store: FieldsStore, folder: string, weather: WeatherReader) {
  const labels = labelBookOf(store.labels);
  const answer = { version: '1.2.3', catalogue, climates: createClimateCache(weather) };
  const desk = createFieldsDesk({
    store,
    version: '1.2.3',
    now: tickingClock('2026-11-26T00:00:00.000Z'),
    answer: { ...answer, labels },
    weather: { stations: weather.stations, fetch: fetchNothing },
    keepFile: async (name, text) => keepFile(folder, name, text),
  });
  return { desk, labels };
}
