import type { IncomingMessage, Server } from 'node:http';
import { serve as listen } from '@hono/node-server';
import { ConflictError } from '../errors.ts';
import { IMPORT_PATH } from './bodyLimits.ts';
import { createApp } from './createApp.ts';
import type { HttpDeps } from './deps.ts';
import { idleWork } from './idleWork.ts';

export interface ServeOptions {
  /** Port; 0 takes any free one. */
  readonly port: number;
  /** Address to listen on; this computer alone where absent. Another needs a guard with a token. */
  readonly host?: string;
  /** Times that clients have; those below where absent. */
  readonly patience?: Partial<Patience>;
  /** What is done while nobody asks anything; nothing where absent. */
  readonly whileIdle?: readonly (() => Promise<unknown>)[];
}

/** Time a client has, after which it is cut off, so that slow ones hold nobody up. [ms] */
export interface Patience {
  /** For the head of a request. */
  readonly headMs: number;
  /** For a whole request that is no file. */
  readonly requestMs: number;
  /** For a file, and for taking up any of an answer that waits for it. */
  readonly fileMs: number;
}

/** A running server. */
export interface RunningServer {
  readonly port: number;
  /** Stops taking requests, ends those under way, and gives the port back. */
  close(): Promise<void>;
}

const LOOPBACK = '127.0.0.1';

const PATIENCE: Patience = { headMs: 10_000, requestMs: 30_000, fileMs: 15 * 60_000 };
/** Longest time between two looks at who is late. [ms] */
const LOOK_MS = 1000;
/** Time that requests under way have to end when the server stops. [ms] */
const ENDING_MS = 10_000;
const MOST_CONNECTIONS = 1024;

/**
 * Serves the page and the interface.
 * @throws {ConflictError} PORT_TAKEN, ADDRESS_NOT_OURS, TOKEN_NEEDED
 */
export function startServer(
  deps: HttpDeps,
  { port, host = LOOPBACK, patience, whileIdle = [] }: ServeOptions,
): Promise<RunningServer> {
  if (host !== LOOPBACK && (deps.guard?.token ?? null) === null) {
    throw new ConflictError('TOKEN_NEEDED', `Listening on ${host} needs a token.`, {
      hint: 'Other computers reach that address; without a token anyone there could read the fields.',
    });
  }
  const app = createApp(deps);
  const { headMs, requestMs, fileMs } = { ...PATIENCE, ...patience };
  return new Promise((resolve, reject) => {
    // An empty name would stand for all addresses.
    if (host.trim() === '') return reject(addressNotOurs(host));
    const server = listen(
      {
        fetch: app.fetch,
        port,
        hostname: host,
        serverOptions: {
          headersTimeout: headMs,
          requestTimeout: fileMs,
          connectionsCheckingInterval: Math.min(LOOK_MS, headMs),
        },
      },
      (info) => {
        const idle = idleWork(server, whileIdle);
        resolve({ port: info.port, close: () => Promise.all([idle.stop(), close(server)]).then(() => {}) });
      },
    ) as Server;
    server.maxConnections = MOST_CONNECTIONS;
    server.setTimeout(fileMs);
    server.on('request', (request) => hurry(request, requestMs));
    server.on('error', (error: NodeJS.ErrnoException) => reject(refusalOf(error, port, host)));
  });
}

/** Hangs up on a client that takes too long to send what is no file. */
function hurry(request: IncomingMessage, requestMs: number): void {
  if (request.url?.startsWith(IMPORT_PATH)) return;
  const timer = setTimeout(() => request.destroy(), requestMs);
  request.once('end', () => clearTimeout(timer));
  request.once('close', () => clearTimeout(timer));
}

function close(server: Server): Promise<void> {
  return new Promise((done, failed) => {
    const cut = setTimeout(() => server.closeAllConnections(), ENDING_MS);
    server.close((error) => {
      clearTimeout(cut);
      if (error) failed(error);
      else done();
    });
    server.closeIdleConnections();
  });
}

const addressNotOurs = (host: string, cause?: Error) =>
  new ConflictError('ADDRESS_NOT_OURS', `${JSON.stringify(host)} is no address of this computer.`, {
    hint: 'Give an address that this computer has, or 0.0.0.0 for all of them.',
    cause,
  });

function refusalOf(error: NodeJS.ErrnoException, port: number, host: string): Error {
  if (error.code === 'EADDRINUSE') {
    return new ConflictError('PORT_TAKEN', `Port ${port} is taken by another program.`, {
      hint: 'Choose another with --port, or 0 for any free one.',
      cause: error,
    });
  }
  if (error.code === 'EADDRNOTAVAIL' || error.syscall === 'getaddrinfo') {
    return addressNotOurs(host, error);
  }
  return error;
}
