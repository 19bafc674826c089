import type { IncomingMessage, Server, ServerResponse } from 'node:http';

/** Time without a request before a piece of work begins. [ms] */
const QUIET_MS = 150;

/** Work under way in a server's idle moments. */
export interface IdleWork {
  /** Begins no further piece, and waits for the one under way. */
  stop(): Promise<void>;
}

/**
 * Does pieces of work one after the other while a server answers nobody: none begins while a request is under way, nor
 * soon after one. A piece that fails is left out, as nobody waits for it.
 */
export function idleWork(
  server: Pick<Server, 'on' | 'off'>,
  pieces: readonly (() => Promise<unknown>)[],
  quietMs: number = QUIET_MS,
): IdleWork {
  const left = [...pieces];
  let underWay = 0;
  let asked = 0;
  let timer: NodeJS.Timeout | undefined;
  let atWork: Promise<unknown> | null = null;
  const wait = (ms: number) => {
    clearTimeout(timer);
    timer = setTimeout(begin, ms);
    timer.unref();
  };
  const heed = (_request: IncomingMessage, response: ServerResponse) => {
    asked++;
    underWay++;
    clearTimeout(timer);
    response.once('close', () => {
      underWay--;
      if (underWay === 0 && atWork === null) wait(quietMs);
    });
  };
  async function begin(): Promise<void> {
    const piece = left.shift();
    if (piece === undefined) return void server.off('request', heed);
    const before = asked;
    atWork = piece().catch(() => undefined);
    await atWork;
    atWork = null;
    // Even without a pause, what has come meanwhile is heard before the next piece.
    if (underWay === 0) wait(asked === before ? 0 : quietMs);
  }
  server.on('request', heed);
  wait(quietMs);
  return {
    async stop() {
      left.length = 0;
      server.off('request', heed);
      clearTimeout(timer);
      await atWork;
    },
  };
}
