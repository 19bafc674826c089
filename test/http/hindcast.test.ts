import { describe, expect, it } from 'vitest';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { loadCatalogue } from '../../src/catalogue/loadCatalogue.ts';
import { readDataFolder } from '../../src/catalogue/readDataFolder.ts';
import { demoFarm } from '../../src/demo/demoFarm.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { createApp } from '../../src/http/createApp.ts';
import { problemSchema } from '../../src/schema/answer.ts';
import { hindcastSchema } from '../../src/schema/hindcast.ts';
import { hindcastEventSchema } from '../../src/schema/hindcastEvents.ts';
import { noOutside } from './noOutside.ts';

const weather = createDemoReader();
const app = createApp({
  version: '1.2.3',
  catalogue: loadCatalogue(readDataFolder(new URL('../../data', import.meta.url))),
  climates: createClimateCache(weather),
  weather,
  ...noOutside,
  desk: {
    ...noOutside.desk,
    fields: { ...noOutside.desk.fields, list: async () => ({ kept: [], removed: [] }) },
  },
  example: { question: demoQuestion, farm: demoFarm },
  pageFolder: null,
  log: () => undefined,
});
const ask = (change: object, signal?: AbortSignal, headers: Record<string, string> = {}) =>
  app.request('/api/hindcast', {
    method: 'POST',
    body: JSON.stringify({ ...demoQuestion, baseFrom: 1990, baseTo: 2014, ...change }),
    headers: { 'content-type': 'application/json', ...headers },
    signal,
  });

describe('POST /api/hindcast', () => {
  it('looks back on a whole question, leaving its own season aside', async () => {
    const response = await ask({});
    expect(response.status).toBe(200);
    const { years, leads, question, recorded } = hindcastSchema.parse(await response.json());
    expect(years.length).toBe(25);
    expect(leads.length).toBe(5);
    expect(recorded?.counted).toBe(0);
    expect(question.asOf).toBeUndefined();
  });

  it('refuses in the one error shape', async () => {
    const response = await ask({ leadDays: [] });
    expect(response.status).toBe(422);
    expect(problemSchema.parse(await response.json()).details.field).toBe('leadDays');
  });

  it('tells how many years are done to whoever accepts lines, and then the same', async () => {
    const lines = { accept: 'application/x-ndjson' };
    const response = await ask({}, undefined, lines);
    const events = (await response.text())
      .trim()
      .split('\n')
      .map((line) => hindcastEventSchema.parse(JSON.parse(line)));
    expect(events.slice(0, -1)).toEqual(
      Array.from({ length: 25 }, (_event, year) => ({ step: 'progress', done: year + 1, of: 25 })),
    );
    const end = { step: 'end', hindcast: hindcastSchema.parse(await (await ask({})).json()) };
    expect(events.at(-1)).toEqual(end);
    const refused = await (await ask({ residual: 'glyphosate' }, undefined, lines)).text();
    expect(hindcastEventSchema.parse(JSON.parse(refused)).step).toBe('refused');
  });

  it('stops when the reader leaves', async () => {
    const stop = new AbortController();
    const asked = ask({ baseFrom: undefined, baseTo: undefined }, stop.signal);
    stop.abort();
    const response = await asked;
    expect(response.status).toBe(409);
    expect(problemSchema.parse(await response.json()).code).toBe('STOPPED');
  });
});
