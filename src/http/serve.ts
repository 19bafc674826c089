import type { IncomingMessage, Server } from 'node:http';
import { serve as listen } from '@hono/node-server';
import { ConflictError } from '../errors.ts';
import { IMPORT_PATH } from './bodyLimits.ts';
import { createApp } from './createApp.ts';
import type { HttpDeps } from './deps.ts';

export interface ServeOptions {
  /** Port; 0 takes any free one. */
  readonly port: number;
  /** Address to listen on; this computer alone where absent. Another needs a guard with a token. */
  readonly host?: string;
}

/** A running server. */
export interface RunningServer {
  readonly port: number;
  /** Stops taking requests, ends those under way, and gives the port back. */
  close(): Promise<void>;
}

const LOOPBACK = '127.0.0.1';

/** Time a client has for the head of a request, for a whole one, and for a file. [ms] */
const HEAD_MS = 10_000;
const REQUEST_MS = 30_000;
const FILE_MS = 15 * 60_000;
/** Time that requests under way have to end when the server stops. [ms] */
const ENDING_MS = 10_000;
const MOST_CONNECTIONS = 1024;

/**
 * Serves the page and the interface.
 * @throws {ConflictError} PORT_TAKEN, ADDRESS_NOT_OURS, TOKEN_NEEDED
 */
export function startServer(deps: HttpDeps, { port, host = LOOPBACK }: ServeOptions): Promise<RunningServer> {
  if (host !== LOOPBACK && (deps.guard?.token ?? null) === null) {
    throw new ConflictError('TOKEN_NEEDED', `Listening on ${host} needs a token.`, {
      hint: 'Other computers reach that address; without a token anyone there could read the fields.',
    });
  }
  const app = createApp(deps);
  return new Promise((resolve, reject) => {
    // An empty name would stand for all addresses.
    if (host.trim() === '') return reject(addressNotOurs(host));
    const server = listen(
      {
        fetch: app.fetch,
        port,
        hostname: host,
        serverOptions: {
          headersTimeout: HEAD_MS,
          requestTimeout: FILE_MS,
          connectionsCheckingInterval: 1000,
        },
      },
      (info) => resolve({ port: info.port, close: () => close(server) }),
    ) as Server;
    server.maxConnections = MOST_CONNECTIONS;
    server.on('request', hurry);
    server.on('error', (error: NodeJS.ErrnoException) => reject(refusalOf(error, port, host)));
  });
}

/** Hangs up on a client that takes too long to send what is no file. */
function hurry(request: IncomingMessage): void {
  if (request.url?.startsWith(IMPORT_PATH)) return;
  const timer = setTimeout(() => request.destroy(), REQUEST_MS);
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
