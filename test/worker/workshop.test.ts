import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { batch } from '../../src/app/batch.ts';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { readFieldList } from '../../src/app/fieldList.ts';
import { hindcast } from '../../src/app/hindcast.ts';
import { labelsAsBook } from '../../src/app/labelBook.ts';
import { regionRows } from '../../src/app/region.ts';
import type { Workshop } from '../../src/app/workshop.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import type { RegionEvent } from '../../src/schema/region.ts';
import { createBriefReader } from '../../src/store/briefReader.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { openWorkshop } from '../../src/worker/openWorkshop.ts';
import { generatedRecord } from '../bench/generatedRecord.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { labelOf } from '../fixtures/fields/larkrise.ts';

const STATIONS = 40;
const folder = mkdtempSync(join(tmpdir(), 'drywake-test-'));
const shops: Workshop[] = [2].map((workers) => openWorkshop(catalogue, workers));

beforeAll(async () => {
  const store = await openWeatherStore(folder, { mode: 'write' });
  await store.importRecords(Array.from({ length: STATIONS }, (_, number) => generatedRecord(number, 14)));
  await store.close();
});
afterAll(async () => {
  for (const shop of shops) await shop.close();
  rmSync(folder, { recursive: true, force: true });
});

const question = {
  ...{ residual: 'imazethapyr', crop: 'lentil', interval: '9 months' },
  ...{ appliedOn: '2025-08-10', plantOn: '2026-05-10', asOf: '2025-12-15' },
};

async function region(workshop?: Workshop): Promise<string> {
  const weather = createBriefReader(folder);
  const events: RegionEvent[] = [];
  for await (const event of regionRows(question, { version: '1', catalogue, weather, workshop }))
    events.push(event);
  const rows = events.flatMap((event) => (event.step === 'rows' ? event.rows : []));
  expect(rows.length).toBe(STATIONS);
  return JSON.stringify(rows);
}

describe('work by several workers', () => {
  it('gives a region the same to the last bit, whatever their number', async () => {
    const alone = await region();
    expect(alone).toContain('"oddsNow":0.');
    for (const shop of shops) expect(await region(shop)).toBe(alone);
  });

  it('gives a list of fields the same to the last bit', async () => {
    // More rows of one station than a task takes.
    const rows = Array.from({ length: 290 }, (_, row) => {
      const station = `GEN${String(row % 10 === 0 ? 1 : 0).padStart(8, '0')}`;
      const day = String(1 + (row % 28)).padStart(2, '0');
      return `F${row},${10 + row},${station},imazethapyr,lentil,2025-08-${day},2026-05-${day},${row % 2 ? '2025-12-15' : ''}`;
    });
    const text = ['field,acres,station,residual,crop,applied_on,plant_on,as_of', ...rows].join('\n');
    const weather = createBriefReader(folder);
    const by = async (workshop?: Workshop) =>
      JSON.stringify(
        await batch(readFieldList(text, 'f.csv'), {}, { version: '1', catalogue, weather, workshop }),
      );
    const alone = await by();
    expect(alone).toContain('"answered":290');
    for (const shop of shops) expect(await by(shop)).toBe(alone);
  });

  it('gives a hindcast the same to the last bit', async () => {
    const weather = createDemoReader();
    const asked = { ...demoQuestion, labelEntry: 'mine', baseFrom: 1995, baseTo: 2014 };
    const labels = labelsAsBook([{ version: 1, entry: { ...labelOf(), id: 'mine' } }]);
    const by = async (workshop?: Workshop) =>
      JSON.stringify(
        await hindcast(asked, {
          version: '1',
          catalogue,
          climates: createClimateCache(weather),
          weather,
          workshop,
          labels,
        }),
      );
    const alone = await by();
    for (const shop of shops) expect(await by(shop)).toBe(alone);
  });

  it('stops at once when asked', async () => {
    const stop = new AbortController();
    const events = regionRows(
      question,
      { version: '1', catalogue, weather: createBriefReader(folder), workshop: shops[0] },
      stop.signal,
    );
    await events.next();
    stop.abort();
    await expect(events.next()).rejects.toThrow('stopped');
  });
});

describe('several records at once', () => {
  it('are those that are read one by one, in the order asked for', async () => {
    const store = await openWeatherStore(folder, { mode: 'read' });
    const ids = ['GEN00000007', 'GEN00000000', 'GEN00000039'];
    const several = await store.records(ids);
    const single = [];
    for (const id of ids) single.push(await store.record(id));
    expect(several).toEqual(single);
    await expect(store.records(['GEN00000007', 'GEN99'])).rejects.toThrow('no station');
    expect(await store.records([])).toEqual([]);
    await store.close();
  });
});
