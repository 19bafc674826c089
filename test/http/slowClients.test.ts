import { truncateSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createWeatherInbox } from '../../src/app/weatherInbox.ts';
import { type Patience, startServer } from '../../src/http/serve.ts';
import { createReceivedFiles } from '../../src/source/receivedFiles.ts';
import { findRecordFiles } from '../../src/source/recordFiles.ts';
import { createServedStore } from '../../src/store/servedStore.ts';
import { tempFolder } from '../tempFolder.ts';
import { demoDeps } from './demoDeps.ts';

/** Bytes that a slow client says it will send, and the time between two of them. */
const BODY_BYTES = 6000;
const BETWEEN_MS = 5;
/** Time for a head: far more than those of quick clients need on a busy machine. Time for a body: less than a slow one takes. [ms] */
const HEAD_MS = 1500;
const BODY_MS = 2500;
/** More than the connection itself takes up. */
const LARGE_BYTES = 256 * 1024 ** 2;

const SENT_TO_ODDS = { path: '/api/odds', type: 'application/json' };
const SENT_AS_FILE = { path: '/api/weather/import?name=slow.csv', type: 'application/octet-stream' };

/** A server with an inbox of its own, and what it logs. */
async function serving(patience: Partial<Patience>, pageFolder: string | null = null) {
  const folder = tempFolder();
  const log: string[] = [];
  const inbox = createWeatherInbox({
    ...createReceivedFiles(join(folder, 'received')),
    weatherFiles: findRecordFiles,
    importStore: createServedStore(folder).openToWrite,
  });
  const server = await startServer(
    { ...demoDeps, inbox, pageFolder, log: (line) => void log.push(line) },
    { port: 0, patience },
  );
  onTestFinished(() => server.close());
  return { port: server.port, address: `http://127.0.0.1:${server.port}`, log };
}

/** A client that sends one byte of a body at a time until all is sent or it is hung up on. */
function slowClient(port: number, { path, type }: typeof SENT_TO_ODDS) {
  let sent = 0;
  let got = '';
  let begun = () => {};
  const hasBegun = new Promise<void>((resolve) => {
    begun = resolve;
  });
  const ended = new Promise<{ sent: number; got: string }>((resolve) => {
    const socket = connect(port, '127.0.0.1', () => {
      socket.write(
        `POST ${path} HTTP/1.1\r\nHost: localhost\r\nContent-Type: ${type}\r\nContent-Length: ${BODY_BYTES}\r\n\r\n`,
      );
      const sending = setInterval(() => {
        if (sent < BODY_BYTES) socket.write(' ', begun);
        sent++;
      }, BETWEEN_MS);
      socket.on('close', () => {
        clearInterval(sending);
        resolve({ sent, got });
      });
    });
    socket.on('error', () => undefined);
    socket.on('data', (piece) => {
      got += piece;
    });
  });
  return { hasBegun, ended };
}

describe.each([
  ['a question', SENT_TO_ODDS, { requestMs: BODY_MS }],
  ['a file', SENT_AS_FILE, { headMs: HEAD_MS, fileMs: BODY_MS }],
] as const)('a client that sends %s one byte at a time', (_, what, patience) => {
  it('is cut off; others are served meanwhile and after it', async () => {
    const { port, address } = await serving(patience);
    const slow = [slowClient(port, what), slowClient(port, what), slowClient(port, what)];
    await Promise.all(slow.map(({ hasBegun }) => hasBegun));
    expect((await fetch(`${address}/api/health`)).status).toBe(200);
    for (const { sent, got } of await Promise.all(slow.map(({ ended }) => ended))) {
      expect(sent).toBeLessThan(BODY_BYTES);
      expect(got).not.toMatch(/^HTTP\/1.1 [235]/);
    }
    expect((await fetch(`${address}/api/health`)).status).toBe(200);
  });
});

it('a file that was cut off leaves the inbox free for the next, and nothing in the log', async () => {
  const { port, address, log } = await serving({ headMs: HEAD_MS, fileMs: BODY_MS });
  await slowClient(port, SENT_AS_FILE).ended;
  const sendNext = async () => {
    const sent = await fetch(`${address}/api/weather/import?name=next.csv`, {
      method: 'POST',
      headers: { 'content-type': SENT_AS_FILE.type },
      body: 'no record',
    });
    return sent.text();
  };
  await expect.poll(sendNext).not.toContain('IMPORT_RUNNING');
  expect(log).toEqual([]);
});

it('a client that does not finish the head of its request is hung up on', async () => {
  const { port } = await serving({ headMs: HEAD_MS });
  const answer = await new Promise<string>((resolve) => {
    const socket = connect(port, '127.0.0.1', () => socket.write('GET /api/health HTTP/1.1\r\nHost: loc'));
    let got = '';
    socket.on('data', (piece) => {
      got += piece;
    });
    socket.on('close', () => resolve(got));
  });
  expect(answer).toMatch(/^HTTP\/1.1 408/);
});

it('a client that takes up nothing of its answer is hung up on', async () => {
  const page = tempFolder();
  writeFileSync(join(page, 'large.bin'), '');
  truncateSync(join(page, 'large.bin'), LARGE_BYTES);
  const { port, address } = await serving({ headMs: HEAD_MS, fileMs: BODY_MS }, page);
  // Ends of connections in this process: those of earlier tests are gone first.
  const ends = () => process.getActiveResourcesInfo().filter((name) => name === 'TCPSocketWrap').length;
  await expect.poll(ends).toBe(0);
  let got = 0;
  const socket = connect(port, '127.0.0.1', () => {
    socket.write('GET /large.bin HTTP/1.1\r\nHost: localhost\r\n\r\n');
  });
  socket.pause();
  socket.on('error', () => undefined);
  await expect.poll(ends).toBe(2);
  // The server lets go of its end; the client has not looked yet.
  await expect.poll(ends).toBe(1);
  const ended = new Promise<void>((resolve) => socket.on('close', () => resolve()));
  socket.on('data', (piece) => {
    got += piece.length;
  });
  socket.resume();
  await ended;
  expect(got).toBeLessThan(LARGE_BYTES);
  expect((await fetch(`${address}/api/health`)).status).toBe(200);
});
