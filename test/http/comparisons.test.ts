import { describe, expect, it } from 'vitest';
import { demoFarm } from '../../src/demo/demoFarm.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { createApp } from '../../src/http/createApp.ts';
import { alternativesSchema } from '../../src/schema/alternatives.ts';
import { answerSchema, problemSchema } from '../../src/schema/answer.ts';
import { bioassayGuideSchema } from '../../src/schema/bioassay.ts';
import { comparisonSchema, cropGridSchema } from '../../src/schema/comparison.ts';
import { sheetSchema } from '../../src/schema/sheet.ts';
import { demoDeps, demoSeason } from '../app/demoDeps.ts';
import { noOutside } from './noOutside.ts';

const app = createApp({
  ...demoDeps,
  ...noOutside,
  weather: createDemoReader(),
  example: { question: demoQuestion, farm: demoFarm },
  pageFolder: null,
  log: () => undefined,
});
const post = (path: string, body: unknown) =>
  app.request(path, {
    method: 'POST',
    body: typeof body === 'string' ? body : JSON.stringify(body),
    headers: { 'content-type': 'application/json' },
  });

const comparison = { ...demoSeason, crop: 'lentil', plantOn: '2027-05-10' };
const grid = { ...demoSeason, residual: 'imazethapyr', plantFrom: '2027-05-01', plantTo: '2027-06-01' };
const confirmed = { ...demoQuestion, interval: '4 months' };

describe('routes of comparisons, alternatives, sheet and bioassay', () => {
  it.each([
    ['/api/compare', comparison, comparisonSchema],
    ['/api/crops', grid, cropGridSchema],
    ['/api/alternatives', demoQuestion, alternativesSchema],
    ['/api/sheet', confirmed, sheetSchema],
    ['/api/sheet?units=metric', confirmed, sheetSchema],
  ] as const)('%s answers in the shape of its schema', async (path, body, schema) => {
    const response = await post(path, body);
    expect(response.status).toBe(200);
    const json = await response.json();
    expect(schema.parse(json)).toEqual(json);
  });

  it('/api/bioassay answers in the shape of its schema', async () => {
    const response = await app.request('/api/bioassay?residual=imazethapyr&crop=lentil');
    expect(response.status).toBe(200);
    expect(bioassayGuideSchema.parse(await response.json()).species[0].crop).toBe('lentil');
  });

  it('/api/odds takes other treatments and zones, and answers in shape', async () => {
    const response = await post('/api/odds?with=season', {
      ...confirmed,
      otherTreatments: [{ appliedOn: '2026-07-01', residual: 'sulfentrazone', interval: '6 months' }],
      zones: [{ name: 'turn rows', overlapFactor: 2 }],
      growthStage: { plants: 'grass', bbch: 25 },
    });
    const answer = answerSchema.parse(await response.json());
    expect(answer.zones).toHaveLength(1);
    expect(answer.inputs.canopyFraction).toBe(0.6);
    expect(answer.why?.parts).toHaveLength(3);
  });

  it.each([
    ['/api/compare', { ...comparison, crop: 'moss' }, 'CROP_UNKNOWN'],
    ['/api/compare', { ...comparison, residual: 'atrazine' }, 'REQUEST_UNREADABLE'],
    ['/api/compare', '{', 'REQUEST_UNREADABLE'],
    ['/api/compare', { ...comparison, station: 'nowhere' }, 'STATION_UNKNOWN'],
    ['/api/crops', { ...grid, plantTo: '2027-04-01' }, 'DATES_DISORDERED'],
    ['/api/crops', { ...grid, stepDays: 1, plantTo: '2030-05-01' }, 'TOO_MANY_DATES'],
    ['/api/crops', { ...grid, crops: [] }, 'REQUEST_UNREADABLE'],
    ['/api/crops', { ...grid, asOf: '2031-01-01' }, 'DATE_OUTSIDE_RECORD'],
    ['/api/alternatives', { ...demoQuestion, crop: 'radish +' }, 'CROP_MIX'],
    ['/api/alternatives', { ...demoQuestion, oddsLimit: 1 }, 'REQUEST_UNREADABLE'],
    ['/api/sheet', demoQuestion, 'SHEET_UNCONFIRMED'],
    ['/api/sheet?units=furlong', confirmed, 'REQUEST_UNREADABLE'],
    ['/api/odds', { ...confirmed, zones: [{ name: '', overlapFactor: 2 }] }, 'REQUEST_UNREADABLE'],
    ['/api/odds', { ...confirmed, otherTreatments: [{ residual: 'atrazine' }] }, 'REQUEST_UNREADABLE'],
  ] as const)('%s refuses in the one shape: %j', async (path, body, code) => {
    const response = await post(path, body);
    expect(response.status).toBeGreaterThanOrEqual(400);
    expect(response.status).toBeLessThan(500);
    expect(problemSchema.parse(await response.json()).code).toBe(code);
  });

  it.each([
    ['/api/bioassay?residual=moss&crop=lentil', 'RESIDUAL_UNKNOWN'],
    ['/api/bioassay?residual=atrazine', 'REQUEST_UNREADABLE'],
  ])('%s is refused', async (path, code) => {
    expect(problemSchema.parse(await (await app.request(path)).json()).code).toBe(code);
  });
});
