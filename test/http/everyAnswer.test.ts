import { describe, expect, it } from 'vitest';
import { fieldOf, labelOf } from '../fixtures/fields/larkrise.ts';
import { demoDeps } from './demoDeps.ts';
import { interfaceDocument } from './interfaceDocument.ts';
import { wholeApp } from './wholeApp.ts';

const { app, desk } = await wholeApp();
const { operations, faultOf } = await interfaceDocument(app);

const { question } = demoDeps.example;
const { station: _, ...everywhere } = question;
const season = { station: question.station, appliedOn: question.appliedOn };
const confirmed = { ...question, interval: '4 months' };
const RECORD = 'TST00000001,20200101,PRCP,5,,,7,\nTST00000001,20200102,TMAX,50,,,7,\n';
const LIST = `station,residual,crop,applied_on,plant_on\ndemo-invented,flumioxazin,lentil,2026-08-14,2027-05-10\n`;
const NEW = { 'if-none-match': '*' };
const at = (version: number) => ({ 'if-match': `"${version}"` });
const csv = async (path: string) => (await app.request(path)).text();

/** A request that is answered: method, path of the document, its address where that is another, body, headers. */
interface Asked {
  readonly ask: string;
  readonly at?: string;
  readonly body?: () => unknown;
  readonly headers?: Record<string, string>;
}

/** Shelves go through their whole life; what is removed comes back by undo. */
const shelf = (path: string, record: { readonly id: string }): Asked[] => [
  {
    ask: `PUT ${path}/{id}`,
    at: `${path}/new-one`,
    body: () => ({ ...record, id: 'new-one' }),
    headers: NEW,
  },
  { ask: `DELETE ${path}/{id}`, at: `${path}/new-one`, headers: at(1) },
  { ask: `GET ${path}` },
  { ask: `POST ${path}/{id}/undo`, at: `${path}/new-one/undo`, body: () => ({ version: 2 }) },
  { ask: `GET ${path}/{id}`, at: `${path}/new-one` },
  { ask: `GET ${path}.csv`, at: `${path}.csv?units=us` },
  { ask: `POST ${path}.csv`, body: () => csv(`${path}.csv`), headers: { 'content-type': 'text/csv' } },
];

const FIELD = '/api/fields/home-quarter';
const REQUESTS: readonly Asked[] = [
  { ask: 'POST /api/odds', at: '/api/odds?units=us&with=season', body: () => question },
  { ask: 'POST /api/compare', body: () => ({ ...season, crop: 'lentil', plantOn: question.plantOn }) },
  {
    ask: 'POST /api/crops',
    body: () => ({ ...season, residual: 'flumioxazin', plantFrom: '2027-05-01', plantTo: '2027-06-01' }),
  },
  { ask: 'POST /api/alternatives', body: () => question },
  { ask: 'POST /api/sheet', body: () => confirmed },
  { ask: 'POST /api/sheet/file', body: () => confirmed },
  { ask: 'GET /api/bioassay', at: '/api/bioassay?residual=imazethapyr&crop=lentil' },
  { ask: 'POST /api/hindcast', body: () => question },
  { ask: 'POST /api/region', body: () => everywhere },
  {
    ask: 'POST /api/batch',
    at: '/api/batch?name=list.csv',
    body: async () => LIST,
    headers: { 'content-type': 'text/csv' },
  },
  { ask: 'GET /api/batch/template.csv' },
  { ask: 'GET /api/stations' },
  { ask: 'GET /api/choices' },
  { ask: 'GET /api/catalogue' },
  { ask: 'GET /api/catalogue/{active}', at: '/api/catalogue/flumioxazin?crop=lentil' },
  { ask: 'GET /api/catalogue/crop/{crop}', at: '/api/catalogue/crop/lentil' },
  { ask: 'GET /api/weather/near', at: '/api/weather/near?lat=45.66&lon=-111.05' },
  { ask: 'GET /api/weather/{station}/check', at: '/api/weather/demo-invented/check' },
  {
    ask: 'POST /api/weather/import',
    at: '/api/weather/import?name=TST00000001.csv',
    body: async () => RECORD,
    headers: { 'content-type': 'application/octet-stream' },
  },
  { ask: 'DELETE /api/weather/import' },
  ...shelf('/api/fields', fieldOf()),
  ...shelf('/api/labels', labelOf()),
  { ask: 'GET /api/fields/{id}/answers', at: `${FIELD}/answers?units=us` },
  { ask: 'GET /api/fields/{id}/record/{treatmentId}', at: `${FIELD}/record/stubble` },
  {
    ask: 'PUT /api/fields/{id}',
    at: '/api/fields/sheet-one',
    body: () => fieldOf({ id: 'sheet-one', treatments: fieldOf().treatments.slice(1) }),
    headers: NEW,
  },
  { ask: 'GET /api/fields/{id}/sheet', at: '/api/fields/sheet-one/sheet?plan=lentil' },
  { ask: 'POST /api/fields/refresh', body: () => ({ fetch: false }) },
  { ask: 'GET /api/backup' },
  { ask: 'POST /api/restore', body: async () => ({ replace: true, backup: await desk.backup() }) },
  { ask: 'GET /api/example' },
  { ask: 'GET /api/health' },
];

describe('an answer of every route is what the interface’s own document says', () => {
  it.each(REQUESTS)('$ask', async ({ ask, at: address, body, headers }) => {
    const [method, path] = ask.split(' ');
    const sent = await body?.();
    const response = await app.request(address ?? path, {
      method,
      headers: { ...(body && { 'content-type': 'application/json' }), ...headers },
      ...(body && { body: typeof sent === 'string' ? sent : JSON.stringify(sent) }),
    });
    const copy = response.clone();
    expect([response.status, response.ok ? '' : await response.text()]).toEqual([200, '']);
    expect(await copy.clone().text()).not.toMatch(/"step":"refused"/);
    expect(await faultOf(path, method, copy)).toBeNull();
  });

  it('and no route is left out', () => {
    const all = operations.map(({ method, path }) => `${method} ${path}`);
    expect([...new Set(REQUESTS.map(({ ask }) => ask))].toSorted()).toEqual(all.toSorted());
  });
});
