import { EventEmitter } from 'node:events';
import { Server } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { idleWork } from '../../src/http/idleWork.ts';
import { startServer } from '../../src/http/serve.ts';
import { demoDeps } from './demoDeps.ts';

const QUIET_MS = 20;

/** A request that reaches a server; it is under way until the answer that is given back is closed. */
function requestTo(server: Server): EventEmitter {
  const response = new EventEmitter();
  server.emit('request', {}, response);
  return response;
}

describe('work in idle moments', () => {
  it('is done piece by piece, also past one that fails', async () => {
    const server = new Server();
    const done: number[] = [];
    let atOnce = 0;
    const piece = (index: number) => async () => {
      atOnce++;
      await pause(1);
      expect(atOnce--).toBe(1);
      if (index === 1) throw new Error('no weather');
      done.push(index);
    };
    idleWork(server, [0, 1, 2, 3].map(piece), QUIET_MS);
    await expect.poll(() => done).toEqual([0, 2, 3]);
    await expect.poll(() => server.listenerCount('request')).toBe(0);
  });

  it('waits while a request is under way, before each piece', async () => {
    const server = new Server();
    const done: string[] = [];
    let answer = new EventEmitter();
    const first = async () => {
      done.push('first');
      answer = requestTo(server);
    };
    const second = async () => {
      done.push('second');
    };
    const work = idleWork(server, [first, second], QUIET_MS);
    answer = requestTo(server);
    await pause(5 * QUIET_MS);
    expect(done).toEqual([]);
    answer.emit('close');
    await expect.poll(() => done).toEqual(['first']);
    await pause(5 * QUIET_MS);
    expect(done).toEqual(['first']);
    answer.emit('close');
    await expect.poll(() => done).toEqual(['first', 'second']);
    await work.stop();
  });

  it('begins nothing once the server is to stop, and is waited for', async () => {
    const done: string[] = [];
    let begun = () => {};
    const hasBegun = new Promise<void>((resolve) => {
      begun = resolve;
    });
    const whileIdle = [
      async () => {
        begun();
        await pause(50);
        done.push('first');
      },
      async () => {
        done.push('second');
      },
    ];
    const server = await startServer(demoDeps, { port: 0, whileIdle });
    await hasBegun;
    await server.close();
    expect(done).toEqual(['first']);
    await pause(50);
    expect(done).toEqual(['first']);
  });
});
