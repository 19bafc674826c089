import { statSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { describe, expect, it, onTestFinished } from 'vitest';
import { refusalOf } from '../../refusal.ts';
import { tempFolder } from '../../tempFolder.ts';
import { fetchAll, ID, newService, recordCsv, recordGz } from './fakeService.ts';

/** Node's own client against a real server on the loopback address: connections that break are real ones here. */
async function serve(reply: (request: IncomingMessage, response: ServerResponse, turn: number) => void) {
  let turn = 0;
  const server = createServer((request, response) => reply(request, response, ++turn));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}

const whole = recordGz(200);
const NAME = `${ID}.csv.gz`;

/** Tears an answer off once so much of it has arrived in a folder. */
async function tearOffAfter(bytes: number, response: ServerResponse, folder: string): Promise<void> {
  const arrived = () => statSync(join(folder, `${NAME}.part`), { throwIfNoEntry: false })?.size ?? 0;
  while (arrived() < bytes && !response.destroyed) await pause(10);
  response.destroy();
}

describe('a real connection', () => {
  it('that is torn off is gone on with', async () => {
    const ranges: (string | undefined)[] = [];
    const folder = tempFolder();
    const address = await serve((request, response, turn) => {
      ranges.push(request.headers.range);
      const from = Number(/\d+/.exec(request.headers.range ?? '')?.[0] ?? 0);
      response.setHeader('etag', '"v1"');
      response.setHeader('content-length', whole.length - from);
      if (turn === 1) {
        response.write(whole.subarray(0, 100));
        void tearOffAfter(100, response, folder);
      } else {
        response.writeHead(206, { 'content-range': `bytes ${from}-${whole.length - 1}/${whole.length}` });
        response.end(whole.subarray(from));
      }
    });
    const { service, kept } = newService({ address, folder });
    const [{ problem }] = await fetchAll(service, [ID]);
    expect(problem).toBeNull();
    expect(ranges).toEqual([undefined, 'bytes=100-']);
    expect(kept(NAME)).toEqual(whole);
  });

  it('that falls silent is closed by us', async () => {
    let closed = 0;
    const address = await serve((request, response) => {
      request.socket.on('close', () => closed++);
      response.write('x');
    });
    const { service } = newService({ address, idleMs: 50, attempts: 2 });
    const [{ problem }] = await fetchAll(service, [ID]);
    expect(problem?.message).toContain('at last no data came for 0.05 s');
    await expect.poll(() => closed).toBe(2);
  });

  it('that packs the file on the way gives the file itself', async () => {
    const address = await serve((_, response) => {
      const packed = gzipSync(recordCsv());
      response.writeHead(200, { 'content-encoding': 'gzip', 'content-length': packed.length });
      response.end(packed);
    });
    const { service, kept } = newService({ address });
    const [{ problem }] = await fetchAll(service, [ID]);
    expect(problem).toBeNull();
    expect(kept(NAME)?.toString()).toBe(recordCsv());
  });

  it('that is refused means no service: two attempts, one sentence', async () => {
    const address = await serve(() => undefined);
    const { port } = new URL(address);
    const free = await new Promise<number>((resolve) => {
      const probe = createServer().listen(0, '127.0.0.1', () => {
        const own = (probe.address() as AddressInfo).port;
        probe.close(() => resolve(own));
      });
    });
    expect(free).not.toBe(Number(port));
    const { service, clock } = newService({ address: `http://127.0.0.1:${free}/` });
    const { message } = await refusalOf(service.stationList());
    expect(message).toBe(`The records service at 127.0.0.1:${free} cannot be reached (ECONNREFUSED).`);
    expect(clock.waits).toEqual([1000]);
  });
});
