import { describe, expect, it } from 'vitest';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { labelsAsBook, readLabelEntry } from '../../src/app/labelBook.ts';
import { demoFarm } from '../../src/demo/demoFarm.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { createApp } from '../../src/http/createApp.ts';
import { problemSchema } from '../../src/schema/answer.ts';
import { batchEventSchema } from '../../src/schema/batchEvents.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { noOutside } from './noOutside.ts';

const weather = createDemoReader();
const entry = readLabelEntry({
  ...{ id: 'shed', name: 'Shed (invented)', actives: [{ name: 'imazethapyr' }] },
  ...{ labelVersion: 'invented', enteredOn: '2026-05-01' },
  intervals: [{ crop: 'lentil', interval: '10 months' }],
});
const app = createApp({
  version: '1.2.3',
  catalogue,
  climates: createClimateCache(weather),
  labels: labelsAsBook([{ version: 2, entry }]),
  weather,
  ...noOutside,
  example: { question: demoQuestion, farm: demoFarm },
  pageFolder: null,
  log: () => undefined,
});
const LIST = `field,acres,station,label_entry,crop,applied_on,plant_on
North,160,demo-invented,shed,lentil,2026-08-14,2027-05-10
=Nowhere,80,nowhere,shed,lentil,2026-08-14,2027-05-10
`;
const ask = (body: string, type = 'text/csv') =>
  app.request('/api/batch?name=f.csv', { method: 'POST', body, headers: { 'content-type': type } });

describe('POST /api/batch', () => {
  it('tells start, progress and end with all rows, as JSON and as CSV', async () => {
    const response = await ask(LIST);
    expect(response.headers.get('content-type')).toBe('application/x-ndjson');
    const lines = (await response.text()).trim().split('\n');
    const events = lines.map((line) => batchEventSchema.parse(JSON.parse(line)));
    expect(events.map(({ step }) => step)).toEqual(['start', 'progress', 'progress', 'end']);
    const end = events.at(-1);
    if (end?.step !== 'end') throw new Error('no end');
    expect(end.batch.rows.map(({ problem }) => problem?.code)).toEqual([undefined, 'STATION_UNKNOWN']);
    expect(end.batch.rows[0].answer).toMatchObject({ labelDate: '2027-06-14', intervalConfirmed: true });
    expect(end.csv).toMatch(
      /^field,acres,station,label_entry,crop,applied_on,plant_on,rank,odds_at_planting/,
    );
    expect(end.csv).toContain("\n'=Nowhere,");
  });

  it('refuses what is no list in the one error shape, before any line', async () => {
    for (const [body, code] of [
      ['station,crop\na,b\n', 'BATCH_COLUMNS'],
      [LIST.split('\n')[0], 'BATCH_EMPTY'],
      ['a,b\n"1,2\n', 'FILE_UNREADABLE'],
    ]) {
      const response = await ask(body);
      expect([response.status, problemSchema.parse(await response.json()).code]).toEqual([422, code]);
    }
    expect((await ask(LIST, 'application/json')).status).toBe(422);
  });

  it('stops the work of a reader who leaves', async () => {
    const reader = (await ask(LIST)).body?.getReader();
    await reader?.read();
    await reader?.cancel();
    expect((await reader?.read())?.done).toBe(true);
  });

  it('gives a list to start from, which answers as it stands', async () => {
    const template = await (await app.request('/api/batch/template.csv')).text();
    const lines = (await (await ask(template)).text()).trim().split('\n');
    expect(JSON.parse(lines.at(-1) ?? '')).toMatchObject({ step: 'end', batch: { answered: 1, refused: 0 } });
  });
});
