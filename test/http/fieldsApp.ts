import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { createFieldsDesk } from '../../src/app/fieldsDesk.ts';
import { labelBookOf } from '../../src/app/labelBook.ts';
import { demoFarm } from '../../src/demo/demoFarm.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { createApp } from '../../src/http/createApp.ts';
import type { FetchSummary } from '../../src/schema/fetchSummary.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { openFields, tickingClock } from '../store/openFields.ts';
import { tempFolder } from '../tempFolder.ts';
import { noOutside } from './noOutside.ts';

const ADDRESS = 'http://localhost';

/** The interface over a real store of fields in an empty data folder, and the demo's weather. */
export async function fieldsApp(fetchStation?: (id: string) => Promise<FetchSummary>) {
  const folder = tempFolder();
  const store = await openFields(folder);
  const weather = createDemoReader();
  const labels = labelBookOf(store.labels);
  const answer = { version: '1.2.3', catalogue, climates: createClimateCache(weather) };
  const desk = createFieldsDesk({
    store,
    version: '1.2.3',
    now: tickingClock('2026-11-26T00:00:00.000Z'),
    answer: { ...answer, labels },
    weather: { stations: weather.stations, fetch: fetchStation ?? noOutside.desk.backup },
    async keepFile(name, text) {
      writeFileSync(join(folder, name), text, { flag: 'wx' });
      return name;
    },
  });
  const log: string[] = [];
  const app = createApp({
    ...answer,
    labels,
    weather,
    ...noOutside,
    desk,
    example: { question: demoQuestion, farm: demoFarm },
    pageFolder: null,
    log: (line) => void log.push(line),
  });
  /** Asks, with a JSON body where there is one. */
  async function ask(
    method: string,
    path: string,
    body?: unknown,
    headers: Record<string, string> = {},
  ): Promise<{ status: number; headers: Headers; body: unknown }> {
    const response = await app.request(`${ADDRESS}${path}`, {
      method,
      headers: { ...(body !== undefined && { 'content-type': 'application/json' }), ...headers },
      ...(body !== undefined && { body: JSON.stringify(body) }),
    });
    return { status: response.status, headers: response.headers, body: await response.json() };
  }
  return { app, ask, desk, store, folder, log };
}
