import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { HttpResponse, http } from 'msw';
import { beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import { fetchProgressText } from '../../src/cli/fetchProgress.ts';
import { realDeps } from '../../src/cli/realDeps.ts';
import { run } from '../../src/cli/run.ts';
import { fetchSummarySchema } from '../../src/schema/fetchSummary.ts';
import { openWeatherStore } from '../../src/store/weatherStore.ts';
import { ADDRESS, inventoryLine, recordGz, stationLine, useServer } from '../source/service/fakeService.ts';
import { tempFolder } from '../tempFolder.ts';
import { runDrywake } from './runDrywake.ts';

// Each command opens the store; on a busy machine that takes seconds.
vi.setConfig({ testTimeout: 60_000 });

const { server, unhandled } = useServer();
const IDS = ['TST00000001', 'TST00000002', 'TST00000003'];

/** Lists of three stations, the third without temperatures; records of the first two and the third's broken one. */
function serveRecords(): string[] {
  const asked: string[] = [];
  const inventory = IDS.flatMap((id, index) =>
    ['PRCP', 'TMAX', 'TMIN']
      .filter((element) => index < 2 || element === 'PRCP')
      .map((element) => inventoryLine(id, 45 + index, -111, element, 1950, 2025)),
  );
  const answers: Record<string, (request: Request) => Response> = {
    'ghcnd-stations.txt': () =>
      HttpResponse.text(
        IDS.map((id, index) => stationLine(id, 45 + index, -111, 'MT', `PLACE ${index}`)).join(''),
      ),
    'ghcnd-inventory.txt': () => HttpResponse.text(inventory.join('')),
    'by_station/TST00000001.csv.gz': (asked) => gz('TST00000001', asked),
    'by_station/TST00000002.csv.gz': (asked) => gz('TST00000002', asked),
    'by_station/TST00000003.csv.gz': () => HttpResponse.html('<html>sign in</html>'),
  };
  server.use(
    http.get(`${ADDRESS}*`, ({ request }) => {
      const place = request.url.slice(ADDRESS.length);
      asked.push(place);
      return answers[place]?.(request) ?? new HttpResponse(null, { status: 404 });
    }),
  );
  return asked;
}

const gz = (id: string, request: Request) => {
  const etag = `"${id}"`;
  if (request.headers.get('if-none-match') === etag) return new HttpResponse(null, { status: 304 });
  return new HttpResponse(Uint8Array.from(recordGz(20, id)), { headers: { etag } });
};

const stationsIn = async (store: string) => {
  const { out } = await runDrywake(['weather', 'list', '--json'], store);
  return JSON.parse(out).stations.filter(({ invented }: { invented: boolean }) => !invented);
};

beforeEach(() => {
  vi.stubEnv('DRYWAKE_RECORDS', ADDRESS);
  onTestFinished(() => {
    vi.unstubAllEnvs();
  });
});

describe('weather fetch', () => {
  it('brings the stations of a state into the store, with names and positions', async () => {
    serveRecords();
    const store = tempFolder();
    const { code, out, err } = await runDrywake(
      ['weather', 'fetch', '--state', 'mt', '--since', '1981'],
      store,
    );
    expect(err).toContain('2 files to fetch from https://records.test/daily/');
    expect(err).toMatch(/\[2\/2\] TST0000000[12]\.csv\.gz: .*20 values new, 0 replaced.*\(fetched\)/);
    expect(code).toBe(0);
    expect(out).toBe('2 of 2 in the store; 2 fetched, 0 unchanged since the last time.\n');
    expect(await stationsIn(store)).toMatchObject([
      { id: 'TST00000001', name: 'PLACE 0', latitudeDeg: 45, elevationM: 1000, rainDays: 20 },
      { id: 'TST00000002', name: 'PLACE 1', latitudeDeg: 46, firstDate: '2001-01-01' },
    ]);
    expect(readdirSync(join(store, 'records')).sort()).toEqual([
      'TST00000001.csv.gz',
      'TST00000002.csv.gz',
      'ghcnd-inventory.txt',
      'ghcnd-stations.txt',
      'index.json',
    ]);
    expect(unhandled).toEqual([]);
  });

  it('selects by box and element, and only says so with --dry-run', async () => {
    const asked = serveRecords();
    const box = ['weather', 'fetch', '--box', '45.5,-112,48,-110', '--with', 'prcp', '--dry-run'];
    const { code, out } = await runDrywake(box, tempFolder());
    expect([code, out]).toEqual([0, 'TST00000002\nTST00000003\n']);
    expect(asked.filter((place) => place.startsWith('by_station'))).toEqual([]);
  });

  it('goes on after a file that fails, and ends with 2', async () => {
    serveRecords();
    const store = tempFolder();
    const { code, out, err } = await runDrywake(['weather', 'fetch', ...IDS, '--json'], store);
    expect(code).toBe(2);
    expect(err).toContain('The service answers TST00000003 with a web page, not a record.');
    expect(err).toContain('1 of 3 did not come into the store.');
    const summary = fetchSummarySchema.parse(JSON.parse(out));
    expect(summary).toMatchObject({ fetched: 2, unchanged: 0, imported: 2, failed: 1, stopped: false });
    expect((await stationsIn(store)).map(({ id }: { id: string }) => id)).toEqual(IDS.slice(0, 2));
  });

  it('asks for an unknown id’s neighbours instead of the service', async () => {
    const asked = serveRecords();
    const { code, err } = await runDrywake(['weather', 'fetch', 'TST00000009'], tempFolder());
    expect(code).toBe(2);
    expect(err).toContain('The service lists no station "TST00000009".\nThe nearest ids are TST00000001');
    expect(asked).toEqual(['ghcnd-stations.txt']);
  });

  it('without a network says one sentence and leaves the store as it was', async () => {
    serveRecords();
    const store = tempFolder();
    await runDrywake(['weather', 'fetch', IDS[0]], store);
    const before = await stationsIn(store);
    const { code, out, err } = await runDrywake(
      ['weather', 'fetch', IDS[0], '--records', 'http://127.0.0.1:9/', '--json'].slice(),
      store,
    );
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err.split('\n')).toHaveLength(3);
    expect(err).toMatch(/^The records service at 127\.0\.0\.1:9 cannot be reached \(/);
    expect(await stationsIn(store)).toEqual(before);
  });

  it('keeps what it fetched while another holds the store, and imports it the next time', async () => {
    const asked = serveRecords();
    const store = tempFolder();
    const held = await openWeatherStore(store, { mode: 'write' });
    const first = await runDrywake(['weather', 'fetch', IDS[0]], store);
    await held.close();
    expect(first.code).toBe(2);
    expect(first.err).toMatch(/store .* is (already open|held)/);
    const second = await runDrywake(['weather', 'fetch', IDS[0]], store);
    expect(second.code).toBe(0);
    expect(asked.filter((place) => place === `by_station/${IDS[0]}.csv.gz`)).toHaveLength(2);
    expect(second.out).toBe('1 of 1 in the store; 0 fetched, 1 unchanged since the last time.\n');
    expect(await stationsIn(store)).toHaveLength(1);
    const third = await runDrywake(['weather', 'fetch', IDS[0]], store);
    expect(third.err).toContain(`${IDS[0]}: unchanged at the service, and in the store already`);
    expect(third.out).toBe('1 of 1 in the store; 0 fetched, 1 unchanged since the last time.\n');
  });

  it.each([
    [[], 'Nothing was named to fetch.'],
    [['--since', '1981', IDS[0]], '--since chooses among the stations of a place; none is given.'],
    [['--state', 'MTX'], '--state cannot be used so: a state or province code of two letters, such as MT.'],
    [['--box', '1,2,3'], 'Write south, west, north and east in degrees'],
    [['--box', '46,-112,45,-110'], '--box cannot be used so: a box whose south lies south of its north.'],
    [['--state', 'MT', '--with', 'rain'], 'PRCP'],
    [['--state', 'MT', '--most', '1'], '2 stations were selected; at most 1 are fetched at a time.'],
    [['--state', 'ZZ'], 'The station list holds no state or province "ZZ".'],
    [[IDS[0], '--records', 'ftp://x/'], '"ftp://x/" is no address of a records service.'],
  ])('refuses %j in words', async (flags, words) => {
    serveRecords();
    const { code, err } = await runDrywake(['weather', 'fetch', ...flags], tempFolder());
    expect(code).toBe(2);
    expect(err).toContain(words);
  });
});

describe('the progress line', () => {
  it.each([true, false])('is drawn only where a person watches (%s)', async (interactive) => {
    serveRecords();
    let err = '';
    const terminal = {
      out: () => undefined,
      err: (text: string) => {
        err += text;
      },
      interactive,
      colour: false,
    };
    const deps = realDeps(terminal, tempFolder(), async () => undefined);
    expect(await run(['weather', 'fetch', IDS[0]], deps)).toBe(0);
    expect(err.includes('lists, 0.0 MB')).toBe(interactive);
    expect(err.includes('\x1b')).toBe(interactive);
  });

  it('tells files, bytes, rate and the time left', () => {
    expect(fetchProgressText({ done: 0, total: 0, bytes: 3e6, elapsedMs: 2000 })).toBe(
      'lists, 3.0 MB, 1.5 MB/s',
    );
    expect(fetchProgressText({ done: 1, total: 9, bytes: 0, elapsedMs: 0 })).toBe(
      '1 of 9 files, 0.0 MB, 0.0 MB/s',
    );
    const half = { done: 50, total: 100, bytes: 25e6, elapsedMs: 50_000 };
    expect(fetchProgressText(half)).toBe('50 of 100 files, 25.0 MB, 0.5 MB/s, 50 s left');
    expect(fetchProgressText({ ...half, total: 650 })).toContain('10 min left');
    expect(fetchProgressText({ ...half, total: 18_050 })).toContain('5.0 h left');
    expect(fetchProgressText({ ...half, done: 100 })).not.toContain('left');
  });
});
