import { describe, expect, it } from 'vitest';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { demoFarm } from '../../src/demo/demoFarm.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { createApp } from '../../src/http/createApp.ts';
import { problemSchema } from '../../src/schema/answer.ts';
import { regionEventSchema } from '../../src/schema/region.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { noOutside } from './noOutside.ts';

const weather = createDemoReader();
const app = createApp({
  version: '1.2.3',
  catalogue,
  climates: createClimateCache(weather),
  weather,
  ...noOutside,
  example: { question: demoQuestion, farm: demoFarm },
  pageFolder: null,
  log: () => undefined,
});
const asked = {
  ...{ residual: 'flumioxazin', crop: 'lentil', appliedOn: '2026-08-14' },
  ...{ plantOn: '2027-05-10', asOf: '2026-09-30' },
};
const ask = (change: object = {}) =>
  app.request('/api/region', {
    method: 'POST',
    body: JSON.stringify({ ...asked, ...change }),
    headers: { 'content-type': 'application/json' },
  });

describe('POST /api/region', () => {
  it('tells start, rows and end, a line each', async () => {
    const response = await ask();
    expect(response.headers.get('content-type')).toBe('application/x-ndjson');
    const lines = (await response.text()).trim().split('\n');
    const events = lines.map((line) => regionEventSchema.parse(JSON.parse(line)));
    expect(events.map(({ step }) => step)).toEqual(['start', 'rows', 'end']);
    const [, rows] = events;
    expect(rows.step === 'rows' && rows.rows[0].figures?.oddsNow).toBeGreaterThan(0);
  });

  it('refuses a bad question in the one error shape, before any line', async () => {
    for (const change of [
      { crop: 'lentill' },
      { plantOn: 'soon' },
      { box: { west: 0, east: 1, south: 0, north: 1 } },
    ]) {
      const response = await ask(change);
      expect(response.status).toBe(422);
      expect(problemSchema.parse(await response.json()).hint).not.toBe('');
    }
  });

  it('stops the work of a reader who leaves', async () => {
    const response = await ask();
    const reader = response.body?.getReader();
    await reader?.read();
    await reader?.cancel();
    expect((await reader?.read())?.done).toBe(true);
  });
});
