import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createApp } from '../../src/http/createApp.ts';
import { answerSchema, problemSchema } from '../../src/schema/answer.ts';
import { choicesSchema, exampleSchema, healthSchema } from '../../src/schema/example.ts';
import { runDrywake } from '../cli/runDrywake.ts';
import { tempFolder } from '../tempFolder.ts';
import { demoDeps } from './demoDeps.ts';

const log: string[] = [];
const deps = { ...demoDeps, log: (line: string) => void log.push(line) };
const { weather } = deps;
const app = createApp(deps);

const post = (
  body: string,
  path = '/api/odds',
  headers: Record<string, string> = { 'content-type': 'application/json' },
) => app.request(path, { method: 'POST', body, headers });
const ask = (change: Record<string, unknown> = {}) => post(JSON.stringify({ ...demoQuestion, ...change }));

describe('the interface', () => {
  it('answers a question as the command line does', async () => {
    const response = await ask();
    expect(response.status).toBe(200);
    const answer = answerSchema.parse(await response.json());
    const { out } = await runDrywake(
      [
        ...['odds', '--station', 'demo-invented', '--residual', 'flumioxazin', '--crop', 'lentil', '--json'],
        ...['--applied', '2026-08-14', '--plant', '2027-05-10', '--as-of', '2026-09-30', '--soil', 'loam'],
      ],
      tempFolder(),
    );
    const { model, ...printed } = answerSchema.parse(JSON.parse(out));
    const { model: ownModel, ...own } = answer;
    expect(own).toEqual(printed);
    expect(ownModel.version).toBe('1.2.3');
    expect(model.name).toBe(ownModel.name);
  });

  it('adds curves on request', async () => {
    const response = await post(JSON.stringify(demoQuestion), '/api/odds?with=season');
    expect(answerSchema.parse(await response.json()).season?.odds.length).toBeGreaterThan(1000);
  });

  it('tells stations, choices, example and health, each true to its schema', async () => {
    const json = async (path: string) => (await app.request(path)).json();
    expect((await json('/api/stations')).stations[0]).toMatchObject({ id: 'demo-invented', invented: true });
    expect(choicesSchema.parse(await json('/api/choices')).residuals.length).toBe(
      deps.catalogue.actives.length,
    );
    expect(exampleSchema.parse(await json('/api/example')).question.station).toBe('demo-invented');
    expect(healthSchema.parse(await json('/api/health'))).toMatchObject({
      status: 'ok',
      weather: { stations: 1 },
      fields: { state: 'ready', fields: 0, labels: 0 },
    });
  });

  it('says in its health when records cannot be read', async () => {
    const broken = createApp({
      ...deps,
      weather: { ...weather, stations: () => Promise.reject(new Error('no disk')) },
    });
    const health = healthSchema.parse(await (await broken.request('/api/health')).json());
    expect(health).toMatchObject({
      status: 'degraded',
      weather: { state: 'unreadable', message: 'no disk' },
      fields: { state: 'ready' },
    });
    const count = () => Promise.reject(new Error('no fields'));
    const { desk } = deps;
    const without = createApp({ ...deps, desk: { ...desk, fields: { ...desk.fields, count } } });
    expect(await (await without.request('/api/health')).json()).toMatchObject({
      status: 'degraded',
      weather: { state: 'ready' },
      fields: { state: 'unreadable', message: 'no fields' },
    });
  });
});

it('refuses with dates in the style that is asked for', async () => {
  const late = JSON.stringify({ ...demoQuestion, asOf: '2026-12-01' });
  const said = async (query: string) => (await (await post(late, `/api/odds${query}`)).json()).message;
  expect(await said('')).toContain('nothing is observed on December 1, 2026');
  expect(await said('?dates=iso')).toContain('nothing is observed on 2026-12-01');
  expect(await said('?units=metric')).toContain('nothing is observed on 2026-12-01');
});

describe('refusals, all of one shape', () => {
  const cases: [string, () => Response | Promise<Response>, number, string][] = [
    ['damaged JSON', () => post('{"station": '), 400, 'REQUEST_UNREADABLE'],
    [
      'no JSON',
      () => post('station=1', '/api/odds', { 'content-type': 'text/plain' }),
      415,
      'REQUEST_UNREADABLE',
    ],
    ['a list', () => post('[]'), 422, 'REQUEST_UNREADABLE'],
    ['an unknown field', () => ask({ luck: 1 }), 422, 'REQUEST_UNREADABLE'],
    ['no such date', () => ask({ plantOn: '2027-02-30' }), 422, 'REQUEST_UNREADABLE'],
    ['planting first', () => ask({ plantOn: '2026-08-01' }), 422, 'PLANTING_BEFORE_APPLICATION'],
    ['unknown station', () => ask({ station: 'nowhere' }), 404, 'STATION_UNKNOWN'],
    ['unknown residual', () => ask({ residual: 'water' }), 422, 'RESIDUAL_UNKNOWN'],
    ['no interval', () => ask({ residual: 'chlorsulfuron' }), 422, 'INTERVAL_MISSING'],
    ['too few years', () => ask({ baseFrom: 2010, baseTo: 2015 }), 422, 'TOO_FEW_YEARS'],
    ['outside the record', () => ask({ asOf: '2027-01-01' }), 422, 'DATE_OUTSIDE_RECORD'],
    ['a huge body', () => post(JSON.stringify({ station: 'x'.repeat(70_000) })), 413, 'BODY_TOO_LARGE'],
    [
      'an unknown extra',
      () => post(JSON.stringify(demoQuestion), '/api/odds?with=luck'),
      422,
      'REQUEST_UNREADABLE',
    ],
    ['an unknown route', () => app.request('/api/nothing'), 404, 'ROUTE_UNKNOWN'],
    ['a wrong method', () => app.request('/api/odds'), 404, 'ROUTE_UNKNOWN'],
  ];

  it.each(cases)('%s', async (_, request, status, code) => {
    const response = await request();
    expect(response.status).toBe(status);
    const problem = problemSchema.parse(await response.json());
    expect(problem.code).toBe(code);
    expect(problem.message.length).toBeGreaterThan(10);
    expect(problem.hint.length).toBeGreaterThan(10);
  });

  it('tells of what nobody foresaw nothing in the answer, and the place alone in the log', async () => {
    const broken = createApp({
      ...deps,
      climates: { of: () => Promise.reject(new Error('secret path')), clear: () => undefined },
    });
    const response = await broken.request('/api/odds', {
      method: 'POST',
      body: JSON.stringify(demoQuestion),
      headers: { 'content-type': 'application/json' },
    });
    expect(response.status).toBe(500);
    expect(JSON.stringify(problemSchema.parse(await response.json()))).not.toContain('secret');
    expect(log.join('\n')).toMatch(/"where":"at Object\.of \(app\.test\.ts:\d+:\d+\), at/);
    expect(log.join('\n')).not.toContain('secret path');
  });

  it('names the field at fault', async () => {
    const { details } = await (await ask({ plantOn: '2026-08-01' })).json();
    expect(details.field).toBe('plantOn');
    expect((await (await ask({ asOf: 'soon' })).json()).details.field).toBe('asOf');
  });
});

describe('the reference', () => {
  it('describes every route in OpenAPI 3.1', async () => {
    const document = await (await app.request('/api/openapi.json')).json();
    expect(document.openapi).toBe('3.1.0');
    const routes = readdirSync(new URL('../../src/http/routes', import.meta.url)).length;
    // One address a file, but for shelves of records, which have three: the list, a record, its undoing.
    expect(Object.keys(document.paths).length).toBe(routes + 2 * ['fields', 'labels'].length);
    for (const shape of [
      'Question',
      'Answer',
      'Problem',
      'Station',
      'Assumptions',
      'StoredField',
      'Backup',
    ]) {
      expect(Object.keys(document.components.schemas)).toContain(shape);
    }
    const { responses } = document.paths['/api/odds'].post;
    expect(responses['422'].content['application/json'].schema.$ref).toBe('#/components/schemas/Problem');
  });

  it('has a page of its own, without a script or anything from elsewhere', async () => {
    const response = await app.request('/api');
    const page = await response.text();
    expect(page).toContain('POST /api/odds');
    expect(page).toContain('rotation interval');
    expect(page).not.toMatch(/<script|https?:\/\//);
    expect(response.headers.get('content-security-policy')).toContain("default-src 'self'");
  });
});
