import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { createApp } from '../../src/http/createApp.ts';
import { guardFor } from '../../src/http/guard/guardFor.ts';
import { OWN_COMPUTER, type ServerGuard } from '../../src/http/guard/serverGuard.ts';
import { startServer } from '../../src/http/serve.ts';
import { problemSchema } from '../../src/schema/answer.ts';
import { tempFolder } from '../tempFolder.ts';
import { demoDeps } from './demoDeps.ts';

const log: string[] = [];
const deps = { ...demoDeps, log: (line: string) => void log.push(line) };
const { weather } = deps;
const guarded = (change: Partial<ServerGuard>) =>
  createApp({ ...deps, guard: { ...OWN_COMPUTER, ...change } });
const problemOf = async (response: Response) => problemSchema.parse(await response.json());
const ask = { method: 'POST', body: JSON.stringify(demoQuestion) };
const json = { 'content-type': 'application/json' };

describe('names and origins', () => {
  const app = guarded({});

  it.each(['rebound.example', '127.0.0.1.example', '192.0.2.1'])('refuses the name %s', async (name) => {
    const response = await app.request(`http://${name}/api/health`);
    expect(response.status).toBe(403);
    expect((await problemOf(response)).code).toBe('HOST_REFUSED');
  });

  it.each(['localhost', '127.0.0.1:4717', '[::1]:4717'])('answers to %s', async (name) => {
    expect((await app.request(`http://${name}/api/health`)).status).toBe(200);
  });

  it.each<Record<string, string>>([
    { origin: 'http://elsewhere.example' },
    { origin: 'http://localhost:81' },
    { origin: 'null' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
  ])('refuses what a page elsewhere sends: %o', async (headers) => {
    const response = await app.request('http://localhost/api/odds', {
      ...ask,
      headers: { ...json, ...headers },
    });
    expect(response.status).toBe(403);
    expect((await problemOf(response)).code).toBe('ORIGIN_REFUSED');
  });

  it('lets its own page and programs ask', async () => {
    const own: Record<string, string>[] = [
      {},
      { origin: 'http://localhost', 'sec-fetch-site': 'same-origin' },
    ];
    for (const headers of own) {
      const response = await app.request('http://localhost/api/odds', {
        ...ask,
        headers: { ...json, ...headers },
      });
      expect(response.status).toBe(200);
    }
  });
});

describe('a token', () => {
  const token = 'a-token-of-the-test';
  const app = guarded({ names: ['192.0.2.7'], token });
  const address = 'http://192.0.2.7:4717';

  it('is asked of everyone, on every path', async () => {
    for (const path of ['/', '/api/health', '/api', '/weather']) {
      const response = await app.request(address + path);
      expect(response.status).toBe(401);
      expect((await problemOf(response)).code).toBe('TOKEN_MISSING');
    }
    for (const authorization of ['Bearer wrong', `Basic ${token}`, `Bearer ${token}x`]) {
      expect((await app.request(`${address}/api/health`, { headers: { authorization } })).status).toBe(401);
    }
  });

  it('in the address becomes a cookie that scripts and other sites do not get, and leaves the address', async () => {
    const opened = await app.request(`${address}//elsewhere.example/?crop=lentil&token=${token}`);
    expect(opened.status).toBe(303);
    expect(opened.headers.get('location')).toBe('/elsewhere.example/?crop=lentil');
    const cookie = opened.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/HttpOnly/);
    expect(cookie).toMatch(/SameSite=Strict/);
    const [pair] = cookie.split(';');
    expect((await app.request(`${address}/api/health`, { headers: { cookie: pair } })).status).toBe(200);
  });

  it('goes as a bearer too', async () => {
    const headers = { authorization: `Bearer ${token}` };
    expect((await app.request(`${address}/api/health`, { headers })).status).toBe(200);
  });

  it('is made once for a data folder, for its owner alone to read, and stands in the printed address', async () => {
    const folder = tempFolder();
    const { guard, addresses } = await guardFor('192.0.2.7', folder, undefined);
    expect(guard.token).toHaveLength(24);
    expect((await guardFor('0.0.0.0', folder, '')).guard.token).toBe(guard.token);
    expect(readFileSync(join(folder, 'token'), 'utf8').trim()).toBe(guard.token);
    expect(statSync(join(folder, 'token')).mode & 0o077).toBe(0);
    expect(addresses(4717)).toEqual([`http://192.0.2.7:4717/?token=${guard.token}`]);
    expect((await guardFor('::', folder, 'own one')).addresses(1).join()).toContain('?token=own%20one');
  });

  it('is not made for a server of this computer alone', async () => {
    const folder = tempFolder();
    expect((await guardFor(undefined, folder, undefined)).guard).toBe(OWN_COMPUTER);
    expect(existsSync(join(folder, 'token'))).toBe(false);
  });
});

describe('what a browser is told', () => {
  it.each([
    ['the page’s own folder', '/', {}, 404],
    ['an answer', '/api/health', {}, 200],
    ['the reference', '/api', {}, 200],
    ['a refusal', '/api/odds', { method: 'POST', headers: json, body: '{}' }, 422],
    ['a stranger', 'http://rebound.example/api/health', {}, 403],
  ] as const)(
    'with %s: nothing from elsewhere, no frame, no guess, no referrer',
    async (_, path, how, status) => {
      const response = await guarded({}).request(path, how);
      expect(response.status).toBe(status);
      const told = (name: string) => response.headers.get(name);
      expect(told('content-security-policy')?.split('; ')).toEqual(
        expect.arrayContaining([
          ...["default-src 'self'", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'"],
        ]),
      );
      expect(told('content-security-policy')).not.toMatch(/unsafe|https?:|\*/);
      expect([told('x-content-type-options'), told('referrer-policy'), told('x-frame-options')]).toEqual([
        ...['nosniff', 'no-referrer', 'DENY'],
      ]);
      expect(told('access-control-allow-origin')).toBeNull();
    },
  );
});

describe('limits', () => {
  it('tell a client that asks too often when to come back', async () => {
    // Time stands still, however long the requests take.
    vi.useFakeTimers({ toFake: ['Date', 'setTimeout', 'clearTimeout'] });
    onTestFinished(() => void vi.useRealTimers());
    const app = guarded({ requestsPerSecond: 2 });
    const statuses = [];
    for (let request = 0; request < 6; request++) statuses.push((await app.request('/api/health')).status);
    expect(statuses).toEqual([200, 200, 200, 200, 429, 429]);
    const response = await app.request('/api/health');
    const waitSeconds = Number(response.headers.get('retry-after'));
    expect(waitSeconds).toBeGreaterThanOrEqual(1);
    expect((await problemOf(response)).code).toBe('TOO_MANY_REQUESTS');
    vi.advanceTimersByTime(1000 * waitSeconds);
    expect((await app.request('/api/health')).status).toBe(200);
  });

  it('keep the queue short', async () => {
    let release = () => {};
    const held = new Promise<void>((done) => {
      release = done;
    });
    const app = createApp({
      ...deps,
      guard: { ...OWN_COMPUTER, mostUnderWay: 2 },
      weather: { ...weather, stations: () => held.then(() => weather.stations()) },
    });
    const waiting = [app.request('/api/health'), app.request('/api/health')];
    const refused = await app.request('/api/health');
    expect(refused.status).toBe(503);
    expect(refused.headers.get('retry-after')).toBe('1');
    expect((await problemOf(refused)).code).toBe('SERVER_BUSY');
    release();
    expect((await Promise.all(waiting)).map(({ status }) => status)).toEqual([200, 200]);
    expect((await app.request('/api/health')).status).toBe(200);
  });

  it('count an answer that is told line by line until it is told, or its reader leaves', async () => {
    const app = guarded({ mostUnderWay: 1 });
    const { station: _, ...region } = demoQuestion;
    const askRegion = () =>
      app.request('/api/region', { method: 'POST', body: JSON.stringify(region), headers: json });
    const statusOf = async () => (await app.request('/api/health')).status;
    const told = await askRegion();
    expect([told.status, await statusOf()]).toEqual([200, 503]);
    await told.text();
    expect(await statusOf()).toBe(200);
    const left = await askRegion();
    expect([left.status, await statusOf()]).toEqual([200, 503]);
    await left.body?.cancel();
    expect(await statusOf()).toBe(200);
  });

  it('refuse an address longer than any question', async () => {
    const response = await guarded({}).request(`/api/health?x=${'y'.repeat(17 * 1024)}`);
    expect(response.status).toBe(414);
  });
});

describe('the log', () => {
  it('has a line of JSON for each request, with nothing of what was asked', async () => {
    log.length = 0;
    const app = createApp({ ...deps, logRequests: true });
    await app.request('/api/health?crop=secret');
    await app.request('/api/catalogue/flumioxazin');
    await app.request('/nowhere/secret');
    const lines = log.map((line) => JSON.parse(line));
    expect(lines.map(({ event, status }) => [event, status])).toEqual([
      ['request', 200],
      ['request', 200],
      ['request', 404],
    ]);
    expect(log.join()).not.toMatch(/secret|flumioxazin/);
  });

  it('says of what nobody foresaw where it arose, and neither its message nor the folders of anyone', async () => {
    const fail = async () => {
      const error = new RangeError('the note of secret quarter');
      error.stack = `RangeError: the note of\nsecret quarter\n    at read (file:///home/secret one/app/shelf.js:3:7)\n    at async file:///home/secret/b.js:1:2`;
      throw error;
    };
    for (const weather of [
      { ...deps.weather, stations: fail },
      { ...deps.weather, records: fail },
    ]) {
      log.length = 0;
      const app = createApp({ ...deps, weather });
      const { station: _, ...region } = demoQuestion;
      const { body, status } = await app.request('/api/region', {
        method: 'POST',
        body: JSON.stringify(region),
        headers: json,
      });
      const told = await new Response(body).text();
      expect([200, 500]).toContain(status);
      expect(told).toContain('UNEXPECTED');
      expect(told).not.toContain('secret');
      expect(log.map((line) => JSON.parse(line))).toEqual([
        {
          level: 'error',
          event: 'unforeseen',
          kind: 'RangeError',
          where: 'at read (shelf.js:3:7), at async b.js:1:2',
        },
      ]);
    }
  });
});

describe('a listening server', () => {
  const running: { close(): Promise<void> }[] = [];
  afterAll(() => Promise.all(running.map((server) => server.close())));

  it('does not listen to other computers without a token', () => {
    expect(() => startServer(deps, { port: 0, host: '0.0.0.0' })).toThrow(/needs a token/);
  });

  it.each(['192.0.2.1', 'no such name', '\0', ''])('says when %j is no address of its own', async (host) => {
    const guard = { ...OWN_COMPUTER, token: 'x'.repeat(24) };
    await expect(startServer({ ...deps, guard }, { port: 0, host })).rejects.toMatchObject({
      code: 'ADDRESS_NOT_OURS',
    });
  });

  it('ends what is under way before it stops', async () => {
    let release = () => {};
    const held = new Promise<void>((done) => {
      release = done;
    });
    let begun = () => {};
    const isUnderWay = new Promise<void>((done) => {
      begun = done;
    });
    const stations = () => {
      begun();
      return held.then(() => weather.stations());
    };
    const server = await startServer({ ...deps, weather: { ...weather, stations } }, { port: 0 });
    const answer = fetch(`http://127.0.0.1:${server.port}/api/health`, { headers: { connection: 'close' } });
    await isUnderWay;
    const closed = server.close();
    release();
    expect((await answer).status).toBe(200);
    await closed;
    await expect(fetch(`http://127.0.0.1:${server.port}/api/health`)).rejects.toThrow();
  });
});
