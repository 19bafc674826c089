import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { layeredReader } from '../../src/app/layeredReader.ts';
import { createWeatherInbox } from '../../src/app/weatherInbox.ts';
import { demoFarm } from '../../src/demo/demoFarm.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createDemoReader } from '../../src/demo/demoReader.ts';
import { createApp } from '../../src/http/createApp.ts';
import { problemSchema } from '../../src/schema/answer.ts';
import { type ImportEvent, importEventSchema } from '../../src/schema/importEvents.ts';
import { nearestStationsSchema } from '../../src/schema/place.ts';
import { stationCheckSchema } from '../../src/schema/stationCheck.ts';
import { createReceivedFiles } from '../../src/source/receivedFiles.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { readUsCounties } from '../../src/source/usCounties.ts';
import { createServedStore } from '../../src/store/servedStore.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { tempFolder } from '../tempFolder.ts';
import { noOutside } from './noOutside.ts';

const fixture = (name: string) => readFileSync(new URL(`../fixtures/weather/${name}`, import.meta.url));

/** The whole interface over an empty data folder. */
function serverOver(folder = tempFolder()) {
  const store = createServedStore(folder);
  const weather = layeredReader([store.reader, createDemoReader()]);
  const app = createApp({
    version: '1.2.3',
    catalogue,
    climates: createClimateCache(weather),
    weather,
    ...noOutside,
    inbox: createWeatherInbox({
      ...createReceivedFiles(join(folder, 'received')),
      weatherFiles: findRecordFiles,
      importStore: store.openToWrite,
    }),
    counties: readUsCounties,
    example: { question: demoQuestion, farm: demoFarm },
    pageFolder: null,
    log: () => undefined,
  });
  const send = (name: string, body: BodyInit, headers: Record<string, string> = {}, more = '') =>
    app.request(`http://localhost/api/weather/import?name=${encodeURIComponent(name)}${more}`, {
      method: 'POST',
      body,
      headers: { 'content-type': 'application/octet-stream', ...headers },
      duplex: 'half',
    } as RequestInit);
  const json = async (path: string) => {
    const response = await app.request(`http://localhost${path}`);
    return { status: response.status, body: await response.json() };
  };
  return { app, folder, send, json };
}

const eventsOf = async (response: Response): Promise<ImportEvent[]> =>
  (await response.text())
    .trim()
    .split('\n')
    .map((line) => importEventSchema.parse(JSON.parse(line)));

const refused = async (response: Response) => ({
  status: response.status,
  code: problemSchema.parse(await response.json()).code,
});

it('imports a sent file, lists it, and leaves nothing of it behind but the store', async () => {
  const { send, json, folder } = serverOver();
  const events = await eventsOf(await send('TST00000001.dly', fixture('TST00000001.dly')));
  const last = events.at(-1);
  expect(last).toMatchObject({ step: 'done', summary: { imported: 1, failed: 0, stopped: false } });
  const { stations } = (await json('/api/stations')).body;
  expect(stations.map(({ id }: { id: string }) => id)).toContain('TST00000001');
  expect(readdirSync(join(folder, 'received'))).toEqual([]);
});

it('keeps a station list, so that records sent after it have a name and a place', async () => {
  const { send, json, folder } = serverOver();
  const list = await eventsOf(await send('ghcnd-stations.txt', fixture('ghcnd-stations.txt')));
  expect(list).toEqual([{ step: 'list-kept', file: 'ghcnd-stations.txt' }]);
  await (await send('TST00000001.dly', fixture('TST00000001.dly'))).text();
  const { stations } = (await json('/api/stations')).body;
  const station = stations.find(({ id }: { id: string }) => id === 'TST00000001');
  expect(station.latitudeDeg).not.toBeNull();
  expect(station.name).not.toBe('TST00000001');
  expect(readdirSync(join(folder, 'received'))).toEqual(['station-lists']);
});

it('says what is wrong with a file, and goes on taking others', async () => {
  const { send } = serverOver();
  const [wrong] = await eventsOf(await send('notes.txt', 'Dear diary,\n'));
  expect(wrong).toMatchObject({ step: 'done', summary: { failed: 1 } });
  expect(JSON.stringify(wrong)).toContain('FILE_LAYOUT_UNKNOWN');
  const after = await eventsOf(await send('TST00000001.dly', fixture('TST00000001.dly')));
  expect(after.at(-1)).toMatchObject({ step: 'done', summary: { imported: 1 } });
});

it('takes what the user says about a file', async () => {
  const { send } = serverOver();
  const gauge = 'date,rain\n2021-01-03,10\n2021-01-04,0\n';
  const [unsaid] = await eventsOf(await send('gauge.csv', gauge));
  expect(unsaid).toMatchObject({ step: 'done', summary: { failed: 1 } });
  const said = await eventsOf(await send('gauge.csv', gauge, {}, '&units=metric&station=HOME-1'));
  expect(said.at(-1)).toMatchObject({ step: 'done', summary: { imported: 1 } });
});

it.each([
  ['../../etc/passwd', 422, 'FILE_NAME_INVALID'],
  ['.hidden', 422, 'FILE_NAME_INVALID'],
  ['a\\b.csv', 422, 'FILE_NAME_INVALID'],
  ['x'.repeat(130), 422, 'FILE_NAME_INVALID'],
])('refuses the file name %s', async (name, status, code) => {
  const { send, folder } = serverOver();
  expect(await refused(await send(name, 'x'))).toEqual({ status, code });
  expect(existsSync(join(folder, 'received'))).toBe(false);
});

it.each([
  ['another origin', { origin: 'http://elsewhere.example' }],
  ['another port', { origin: 'http://localhost:81' }],
  ['another site', { 'sec-fetch-site': 'cross-site' }],
])('refuses a file from %s', async (_, headers) => {
  const { send, app } = serverOver();
  expect(await refused(await send('a.csv', 'x', headers))).toEqual({ status: 403, code: 'ORIGIN_REFUSED' });
  const stop = await app.request('http://localhost/api/weather/import', { method: 'DELETE', headers });
  expect(stop.status).toBe(403);
});

it('refuses a file asked for under a name that only points to this computer', async () => {
  const { app } = serverOver();
  const response = await app.request('http://rebound.example/api/weather/import?name=a.csv', {
    method: 'POST',
    body: 'x',
    headers: { 'content-type': 'application/octet-stream', origin: 'http://rebound.example' },
  });
  expect(await refused(response)).toEqual({ status: 403, code: 'HOST_REFUSED' });
});

it('refuses what is larger than allowed, before it is read and while it is', async () => {
  const { send } = serverOver();
  const announced = await send('big.csv', 'x', { 'content-length': '300000001' });
  expect(await refused(announced)).toEqual({ status: 422, code: 'FILE_TOO_LARGE' });
  const chunk = new Uint8Array(50_000_000);
  let sent = 0;
  const endless = new ReadableStream<Uint8Array>({
    pull(controller) {
      sent += chunk.length;
      controller.enqueue(chunk);
    },
  });
  expect(await refused(await send('big.csv', endless))).toEqual({ status: 422, code: 'FILE_TOO_LARGE' });
  expect(sent).toBeLessThan(500_000_000);
});

it('refuses a body of another type', async () => {
  const { send } = serverOver();
  const response = await send('a.csv', 'x', { 'content-type': 'text/plain' });
  expect(await refused(response)).toEqual({ status: 422, code: 'REQUEST_UNREADABLE' });
});

it('takes one file at a time, and stops it when told', async () => {
  const { send, app, json } = serverOver();
  let more: ReadableStreamDefaultController<Uint8Array> | undefined;
  const slow = new ReadableStream<Uint8Array>({
    start(controller) {
      more = controller;
      controller.enqueue(fixture('TST00000001.dly').subarray(0, 100));
    },
  });
  const first = send('slow.dly', slow);
  await expect.poll(async () => (await refused(await send('b.csv', 'x'))).code).toBe('IMPORT_RUNNING');
  const stop = await app.request('http://localhost/api/weather/import', { method: 'DELETE' });
  expect(await stop.json()).toEqual({ stopped: true });
  more?.enqueue(new Uint8Array(10));
  expect((await refused(await first)).code).toBe('IMPORT_STOPPED');
  expect((await json('/api/stations')).body.stations.length).toBe(1);
  const idle = await app.request('http://localhost/api/weather/import', { method: 'DELETE' });
  expect(await idle.json()).toEqual({ stopped: false });
});

it('checks one station', async () => {
  const { json } = serverOver();
  const { status, body } = await json('/api/weather/demo-invented/check');
  expect(status).toBe(200);
  expect(stationCheckSchema.parse(body).completeness.length).toBeGreaterThan(50);
  expect((await json('/api/weather/nowhere/check')).status).toBe(404);
});

it('finds stations around a point or a county, and offers counties where a name means several', async () => {
  const { send, json } = serverOver();
  await (await send('ghcnd-stations.txt', fixture('ghcnd-stations.txt'))).text();
  await (await send('TST00000001.dly', fixture('TST00000001.dly'))).text();
  const near = nearestStationsSchema.parse((await json('/api/weather/near?lat=45.6&lon=-110.3')).body);
  expect(near.stations.map(({ id }) => id)).toEqual(['TST00000001']);
  const county = nearestStationsSchema.parse((await json('/api/weather/near?county=Park,%20MT')).body);
  expect(county.place.name).toBe('Park, MT');
  const several = await json('/api/weather/near?county=Washington');
  expect(several.body).toMatchObject({ code: 'COUNTY_AMBIGUOUS' });
  expect(several.body.details.choices.length).toBeGreaterThan(20);
  for (const query of ['', '?lat=45', '?lat=95&lon=0', '?lat=45&lon=-110&county=Park,%20MT']) {
    expect((await json(`/api/weather/near${query}`)).status).toBe(422);
  }
});

it('reads a file byte for byte as it was sent', async () => {
  const received = createReceivedFiles(tempFolder());
  const bytes = fixture('TST00000001.dly');
  const body = new Blob([bytes]).stream();
  const limits = { mostBytes: 1e6, signal: new AbortController().signal };
  const file = await received.receive('a.dly', body, limits);
  const hash = (data: Uint8Array) => createHash('sha256').update(data).digest('hex');
  expect(hash(readFileSync(file.path))).toBe(hash(bytes));
  await file.remove();
  expect(existsSync(file.path)).toBe(false);
});
