import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { layeredReader } from '../../src/app/layeredReader.ts';
import { createWeatherInbox } from '../../src/app/weatherInbox.ts';
import { createApp } from '../../src/http/createApp.ts';
import { OWN_COMPUTER } from '../../src/http/guard/serverGuard.ts';
import { createReceivedFiles } from '../../src/source/receivedFiles.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { openFieldsStore } from '../../src/store/fieldsStore.ts';
import { createServedStore } from '../../src/store/servedStore.ts';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { tickingClock } from '../store/openFields.ts';
import { demoDeps } from './demoDeps.ts';
import { deskOver } from './deskOver.ts';

/** Nothing but a test asks this often from one place. */
const guard = { ...OWN_COMPUTER, requestsPerSecond: Number.POSITIVE_INFINITY };

/** The interface over real stores in a folder of its own, with one field and one label entry; gone with the test file. */
export async function wholeApp() {
  const folder = mkdtempSync(join(tmpdir(), 'drywake-whole-'));
  const log: string[] = [];
  const store = createServedStore(folder);
  const weather = layeredReader([store.reader, demoDeps.weather]);
  const fields = await openFieldsStore(folder, { now: tickingClock() });
  afterAll(async () => {
    await fields.close();
    rmSync(folder, { recursive: true, force: true });
  });
  await fields.fields.put(fieldOf(), null);
  await fields.labels.put(labelOf(), null);
  const { desk, labels } = deskOver(fields, folder, weather);
  const app = createApp({
    ...demoDeps,
    guard,
    desk,
    labels,
    weather,
    climates: createClimateCache(weather),
    inbox: createWeatherInbox({
      ...createReceivedFiles(join(folder, 'received')),
      weatherFiles: findRecordFiles,
      importStore: store.openToWrite,
    }),
    log: (line) => void log.push(line),
  });
  return { app, desk, log };
}
