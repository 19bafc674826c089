import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { HttpResponse, http } from 'msw';
import { describe, expect, it } from 'vitest';
import { tempFolder } from '../../tempFolder.ts';
import { ADDRESS, fetchAll, ID, newService, recordGz, STATION_URL, useServer } from './fakeService.ts';

const { server, unhandled } = useServer();
const whole = recordGz();
const NAME = `${ID}.csv.gz`;
const bodyOf = (bytes: Buffer): Uint8Array<ArrayBuffer> => Uint8Array.from(bytes);
const answer = (headers: Record<string, string> = {}, bytes = whole) =>
  new HttpResponse(bodyOf(bytes), { headers: { 'content-length': String(bytes.length), ...headers } });

/** Answers the station's file by the number of the request, from 1; the requests' headers are kept. */
function answerInTurn(reply: (turn: number, headers: Headers) => Response | Promise<Response>): Headers[] {
  const asked: Headers[] = [];
  server.use(
    http.get(STATION_URL, ({ request }) => {
      asked.push(request.headers);
      return reply(asked.length, request.headers);
    }),
  );
  return asked;
}

/** A body of these pieces that then ends, breaks off, or says nothing more; each piece is read before what follows it. */
function body(pieces: Uint8Array[], then: 'end' | 'break' | 'silence') {
  const left = [...pieces];
  return new ReadableStream<Uint8Array>(
    {
      async pull(stream) {
        const piece = left.shift();
        if (piece !== undefined) return stream.enqueue(piece);
        if (then === 'silence') return new Promise(() => undefined);
        await new Promise((resolve) => setTimeout(resolve, 20));
        if (then === 'end') stream.close();
        else stream.error(new TypeError('terminated'));
      },
    },
    { highWaterMark: 0 },
  );
}

/** What became of the one station. */
async function fetchOne(made = newService()) {
  const [file] = await fetchAll(made.service, [ID]);
  return { ...made, file };
}

describe('success', () => {
  it('keeps the file as it was sent, notes its version, and says what it is', async () => {
    const asked = answerInTurn(() => answer({ etag: '"v1"' }));
    const { file, kept, folder } = await fetchOne();
    expect(file).toEqual({ title: ID, path: join(folder, NAME), unchanged: false, problem: null });
    expect(kept(NAME)).toEqual(whole);
    expect(readdirSync(folder).sort()).toEqual([NAME, 'index.json']);
    expect(JSON.parse(readFileSync(join(folder, 'index.json'), 'utf8'))).toEqual({
      files: { [NAME]: { url: STATION_URL, etag: '"v1"', lastModified: null, bytes: whole.length } },
      parts: {},
    });
    expect(asked[0].get('user-agent')).toBe('drywake');
    expect(asked[0].get('accept-encoding')).toBe('identity');
  });

  it('finds the files of the mirror in object storage, and looks there first from then on', async () => {
    const asked: string[] = [];
    server.use(
      http.get(`${ADDRESS}*`, ({ request }) => {
        const place = request.url.slice(ADDRESS.length);
        asked.push(place);
        return place.startsWith('csv.gz/') ? answer() : new HttpResponse(null, { status: 404 });
      }),
    );
    const { service, kept } = newService({ mostAtOnce: 1 });
    await fetchAll(service, ['A', 'B']);
    expect(asked).toEqual([
      'by_station/A.csv.gz',
      'csv.gz/by_station/A.csv.gz',
      'csv.gz/by_station/B.csv.gz',
    ]);
    expect(kept('B.csv.gz')).toEqual(whole);
  });

  it('takes the fixed-width file of a station that has no other', async () => {
    const asked: string[] = [];
    server.use(
      http.get(`${ADDRESS}*`, ({ request }) => {
        asked.push(request.url.slice(ADDRESS.length));
        return request.url.endsWith('.dly')
          ? answer({}, Buffer.from('text'))
          : new HttpResponse(null, { status: 404 });
      }),
    );
    const { service, kept } = newService({ mostAtOnce: 1 });
    await fetchAll(service, ['A', 'B']);
    expect(asked.slice(2, 4)).toEqual(['all/A.dly', 'by_station/B.csv.gz']);
    expect(kept('B.dly')?.toString()).toBe('text');
  });
});

describe('revalidation', () => {
  it('sends nothing anew for a file that still holds, and fetches one that does not', async () => {
    const asked = answerInTurn((turn, headers) => {
      if (turn === 1) return answer({ etag: '"v1"', 'last-modified': 'Thu, 01 Jan 2026 00:00:00 GMT' });
      if (headers.get('if-none-match') === '"v1"' && turn === 2)
        return new HttpResponse(null, { status: 304 });
      return answer({ etag: '"v2"' }, recordGz(5));
    });
    const { folder } = await fetchOne();
    const again = await fetchOne(newService({ folder }));
    expect(again.file).toMatchObject({ unchanged: true, path: join(folder, NAME) });
    expect(again.kept(NAME)).toEqual(whole);
    expect(asked[1].get('if-modified-since')).toBe('Thu, 01 Jan 2026 00:00:00 GMT');
    const newer = await fetchOne(newService({ folder }));
    expect(newer.file.unchanged).toBe(false);
    expect(newer.kept(NAME)).toEqual(recordGz(5));
  });

  it('does not trust a file of another size than it noted, nor one of another address', async () => {
    const asked = answerInTurn(() => answer({ etag: '"v1"' }));
    const { folder } = await fetchOne();
    writeFileSync(join(folder, NAME), 'changed');
    await fetchOne(newService({ folder }));
    expect(asked[1].get('if-none-match')).toBeNull();
    server.use(
      http.get('https://other.test/by_station/*', ({ request }) =>
        answer({ seen: String(request.headers.has('if-none-match')) }),
      ),
    );
    const { file } = await fetchOne(newService({ folder, address: 'https://other.test' }));
    expect(file.unchanged).toBe(false);
  });

  it('starts over where the index is damaged', async () => {
    const folder = tempFolder();
    writeFileSync(join(folder, 'index.json'), '{"files": 3');
    answerInTurn(() => answer());
    const { file } = await fetchOne(newService({ folder }));
    expect(file.problem).toBeNull();
  });
});

describe('a service that has trouble', () => {
  it('is asked again after 500, with doubled waits', async () => {
    answerInTurn((turn) => (turn < 4 ? new HttpResponse('<html>oops', { status: 500 }) : answer()));
    const { file, clock } = await fetchOne();
    expect(file.problem).toBeNull();
    expect(clock.waits).toEqual([1000, 2000, 4000]);
  });

  it('is given up on after five attempts', async () => {
    const asked = answerInTurn(() => new HttpResponse(null, { status: 503 }));
    const { file, clock, kept } = await fetchOne();
    expect(asked).toHaveLength(5);
    expect(clock.waits).toEqual([1000, 2000, 4000, 8000]);
    expect(file.problem?.message).toBe(
      `${ID} could not be fetched in 5 attempts; at last the service answered with status 503.`,
    );
    expect(kept(NAME)).toBeNull();
  });

  it('is left alone for the time it asks for with 429, in seconds or as a date', async () => {
    answerInTurn((turn) => {
      if (turn === 1) return new HttpResponse(null, { status: 429, headers: { 'retry-after': '7' } });
      if (turn > 2) return answer();
      const date = 'Thu, 01 Jan 2026 00:00:00 GMT';
      return new HttpResponse(null, {
        status: 429,
        headers: { date, 'retry-after': 'Thu, 01 Jan 2026 00:00:45 GMT' },
      });
    });
    const { file, clock } = await fetchOne();
    expect(file.problem).toBeNull();
    expect(clock.waits).toEqual([7000, 45_000]);
  });

  it('is not waited for without end', async () => {
    const asked = answerInTurn(
      () => new HttpResponse(null, { status: 429, headers: { 'retry-after': '86400' } }),
    );
    const { file } = await fetchOne();
    expect(asked).toHaveLength(1);
    expect(file.problem).toMatchObject({
      code: 'SERVICE_BUSY',
      message: `The service asks to wait 86400 s before ${ID}; 120 s is the longest that is waited.`,
    });
  });

  it('is not asked again where it refuses', async () => {
    const asked = answerInTurn(() => new HttpResponse(null, { status: 403 }));
    const { file } = await fetchOne();
    expect(asked).toHaveLength(1);
    expect(file.problem?.message).toBe(`The service refuses ${ID} (status 403).`);
  });
});

describe('a slow service', () => {
  it('is cut off when no data come, and asked for the rest', async () => {
    const asked = answerInTurn((turn) =>
      turn === 1
        ? new HttpResponse(body([bodyOf(whole.subarray(0, 30))], 'silence'), {
            headers: { etag: '"v1"', 'content-length': String(whole.length) },
          })
        : new HttpResponse(bodyOf(whole.subarray(30)), {
            status: 206,
            headers: { etag: '"v1"', 'content-range': `bytes 30-${whole.length - 1}/${whole.length}` },
          }),
    );
    const { file, kept } = await fetchOne(newService({ idleMs: 1500 }));
    expect(file.problem).toBeNull();
    expect(asked[1].get('range')).toBe('bytes=30-');
    expect(kept(NAME)).toEqual(whole);
  });

  it('is cut off when no answer comes at all', async () => {
    answerInTurn(() => new Promise(() => undefined));
    const { file } = await fetchOne(newService({ connectMs: 40, attempts: 2 }));
    expect(file.problem?.message).toBe(
      `${ID} could not be fetched in 2 attempts; at last no answer came within 0.04 s.`,
    );
  });

  it('is given up on when the time for the file is up', async () => {
    const asked = answerInTurn(() => new HttpResponse(null, { status: 500 }));
    const { file } = await fetchOne(newService({ totalMs: 2500 }));
    expect(asked).toHaveLength(2);
    expect(file.problem?.code).toBe('FETCH_TIMED_OUT');
    const trickle = setInterval(() => undefined, 1000);
    answerInTurn(() => {
      const stream = new ReadableStream<Uint8Array>({
        async pull(controller) {
          await new Promise((resolve) => setTimeout(resolve, 10));
          controller.enqueue(Uint8Array.of(0x1f));
        },
      });
      return new HttpResponse(stream);
    });
    const slow = await fetchOne(newService({ totalMs: 150, attempts: 1, idleMs: 5000 }));
    clearInterval(trickle);
    expect(slow.file.problem?.message).toContain('the time for this file was up');
  });
});

describe('an answer that breaks off', () => {
  const total = `${whole.length}`;
  const rest = (from: number, etag = '"v1"') =>
    new HttpResponse(bodyOf(whole.subarray(from)), {
      status: 206,
      headers: { etag, 'content-range': `bytes ${from}-${whole.length - 1}/${total}` },
    });
  const broken = (upTo: number, headers: Record<string, string>, then: 'end' | 'break' = 'break') =>
    new HttpResponse(body([bodyOf(whole.subarray(0, upTo))], then), {
      headers: { 'content-length': total, ...headers },
    });

  it.each(['break', 'end'] as const)('is gone on with by range (%s)', async (then) => {
    const asked = answerInTurn((turn) => (turn === 1 ? broken(40, { etag: '"v1"' }, then) : rest(40)));
    const { file, kept } = await fetchOne();
    expect(file.problem).toBeNull();
    expect([asked[1].get('range'), asked[1].get('if-range')]).toEqual(['bytes=40-', '"v1"']);
    expect(asked[1].get('if-none-match')).toBeNull();
    expect(kept(NAME)).toEqual(whole);
  });

  it('is gone on with in a later run', async () => {
    const asked = answerInTurn((turn) => (turn === 1 ? broken(40, { etag: '"v1"' }) : rest(40)));
    const first = await fetchOne(newService({ attempts: 1 }));
    expect(first.file.problem?.code).toBe('FETCH_FAILED');
    expect(first.kept(NAME)).toBeNull();
    const { kept } = await fetchOne(newService({ folder: first.folder }));
    expect(asked[1].get('range')).toBe('bytes=40-');
    expect(kept(NAME)).toEqual(whole);
  });

  it('is fetched whole where the service has a newer version meanwhile', async () => {
    answerInTurn((turn) =>
      turn === 1 ? broken(40, { etag: '"v1"' }) : answer({ etag: '"v2"' }, recordGz(7)),
    );
    const { kept } = await fetchOne();
    expect(kept(NAME)).toEqual(recordGz(7));
  });

  it.each([
    ['the rest is of another version', () => rest(40, '"v2"')],
    ['the rest begins elsewhere', () => rest(10)],
    ['the range is refused', () => new HttpResponse(null, { status: 416 })],
  ])('is fetched whole where %s', async (_, second) => {
    const asked = answerInTurn((turn) =>
      turn === 1 ? broken(40, { etag: '"v1"' }) : turn === 2 ? second() : answer({ etag: '"v2"' }),
    );
    const { file, kept } = await fetchOne();
    expect(file.problem).toBeNull();
    expect(asked[2].get('range')).toBeNull();
    expect(kept(NAME)).toEqual(whole);
  });

  it('is fetched whole where nothing strong tells versions apart', async () => {
    const asked = answerInTurn((turn) => (turn === 1 ? broken(40, { etag: 'W/"v1"' }) : answer()));
    await fetchOne();
    expect(asked[1].get('range')).toBeNull();
    const dated = 'Thu, 01 Jan 2026 00:00:00 GMT';
    const later = answerInTurn((turn) =>
      turn === 1 ? broken(40, { etag: 'W/"v1"', 'last-modified': dated }) : answer(),
    );
    await fetchOne();
    expect(later[1].get('if-range')).toBe(dated);
  });

  it('leaves the copy of an earlier time as it was', async () => {
    answerInTurn((turn) => (turn === 1 ? answer({ etag: '"v0"' }) : broken(40, { etag: '"v1"' })));
    const { folder } = await fetchOne();
    const { file, kept } = await fetchOne(newService({ folder }));
    expect(file.problem?.code).toBe('FETCH_FAILED');
    expect(kept(NAME)).toEqual(whole);
  });
});

describe('packed content cut short though the answer is whole', () => {
  const cut = whole.subarray(0, whole.length - 20);

  it('is gone on with, then fetched anew', async () => {
    const asked = answerInTurn((turn) => {
      if (turn === 1) return answer({ etag: '"v1"' }, cut);
      return turn === 2 ? new HttpResponse(null, { status: 416 }) : answer({ etag: '"v2"' });
    });
    const { file, kept } = await fetchOne();
    expect(file.problem).toBeNull();
    expect([asked[1].get('range'), asked[2].get('range')]).toEqual([`bytes=${cut.length}-`, null]);
    expect(kept(NAME)).toEqual(whole);
  });

  it('is refused when it stays so, and nothing is kept', async () => {
    const asked = answerInTurn(() => answer({ etag: '"v1"' }, cut));
    const { file, folder } = await fetchOne();
    expect(asked).toHaveLength(3);
    expect(file.problem?.message).toBe(
      `${ID} arrives cut short: its packed content ends in the middle, also when fetched anew.`,
    );
    expect(readdirSync(folder)).toEqual(['index.json']);
  });

  it('is told from damage inside', async () => {
    const damaged = Buffer.from(whole);
    damaged.fill(0xff, 20, 40);
    const asked = answerInTurn(() => answer({}, damaged));
    const { file } = await fetchOne();
    expect(asked).toHaveLength(3);
    expect(file.problem?.message).toContain('damaged: it cannot be unpacked');
  });
});

describe('an answer that is no record', () => {
  it.each([
    ['by its type', { 'content-type': 'text/html; charset=utf-8' }, 'Sign in'],
    [
      'by its first letters',
      { 'content-type': 'application/octet-stream' },
      '\n<!DOCTYPE html><title>Sign in',
    ],
    ['as an error of object storage', {}, '<?xml version="1.0"?><Error><Code>NoSuchKey</Code></Error>'],
  ])('is refused at once: a web page, %s', async (_, headers, text) => {
    const asked = answerInTurn(() => answer(headers, Buffer.from(text)));
    const { file, folder } = await fetchOne();
    expect(asked).toHaveLength(1);
    expect(file.problem?.message).toBe(`The service answers ${ID} with a web page, not a record.`);
    expect(readdirSync(folder).filter((name) => name !== 'index.json')).toEqual([]);
  });

  it('is refused where it leads to another host or to an open connection', async () => {
    for (const location of ['https://elsewhere.test/x.csv.gz', STATION_URL.replace('https', 'http')]) {
      answerInTurn(() => new HttpResponse(null, { status: 302, headers: { location } }));
      const { file } = await fetchOne();
      expect(file.problem?.message).toBe(
        `The service sends ${ID} on to another address, ${new URL(location).host}; that is not followed.`,
      );
    }
    expect(unhandled).toEqual([]);
  });

  it('may be elsewhere on the same host, but not in a circle', async () => {
    answerInTurn(() => new HttpResponse(null, { status: 301, headers: { location: '/new/place.csv.gz' } }));
    server.use(http.get('https://records.test/new/place.csv.gz', () => answer()));
    const { file, kept } = await fetchOne();
    expect(file.problem).toBeNull();
    expect(kept(NAME)).toEqual(whole);
    const asked = answerInTurn(
      () => new HttpResponse(null, { status: 302, headers: { location: STATION_URL } }),
    );
    expect((await fetchOne()).file.problem?.code).toBe('FETCH_REDIRECTED');
    expect(asked).toHaveLength(4);
  });
});

describe('an answer of 1 GB', () => {
  const PIECE = new Uint8Array(1_000_000);
  const MOST = 50_000_000;

  it('is cut off where its size is not told, and nothing of it is kept', async () => {
    let sent = 0;
    answerInTurn(() => {
      const stream = new ReadableStream<Uint8Array>({
        pull(controller) {
          sent += PIECE.length;
          if (sent > 1e9) controller.close();
          else controller.enqueue(PIECE);
        },
      });
      return new HttpResponse(stream);
    });
    const { file, folder } = await fetchOne(newService({ mostBytes: MOST }));
    expect(file.problem?.message).toBe(
      `The service sends more than 50 MB for ${ID}; it was cut off and nothing of it kept.`,
    );
    expect(sent).toBeGreaterThan(MOST);
    expect(sent).toBeLessThan(MOST + 10 * PIECE.length);
    expect(readdirSync(folder)).toEqual(['index.json']);
  });

  it('is not begun where its size is told; 200 MB is the limit unless another is given', async () => {
    const asked = answerInTurn(() => answer({ 'content-length': '1000000000' }));
    const { file } = await fetchOne();
    expect(asked).toHaveLength(1);
    expect(file.problem?.message).toContain('more than 200 MB');
  });
});
