import { serve as listen } from '@hono/node-server';
import { ConflictError } from '../errors.ts';
import { createApp } from './createApp.ts';
import type { HttpDeps } from './deps.ts';

export interface ServeOptions {
  /** Port; 0 takes any free one. */
  readonly port: number;
}

/** A running server. */
export interface RunningServer {
  /** Address to open, such as http://127.0.0.1:4717/. */
  readonly address: string;
  /** Stops taking requests, ends those under way, and gives the port back. */
  close(): Promise<void>;
}

const LOOPBACK = '127.0.0.1';

/**
 * Serves the page and the interface on the loopback address only.
 * @throws {ConflictError} PORT_TAKEN
 */
export function startServer(deps: HttpDeps, { port }: ServeOptions): Promise<RunningServer> {
  const app = createApp(deps);
  return new Promise((resolve, reject) => {
    const server = listen({ fetch: app.fetch, port, hostname: LOOPBACK }, (info) =>
      resolve({
        address: `http://${LOOPBACK}:${info.port}/`,
        close: () =>
          new Promise((done, failed) => {
            server.close((error) => (error ? failed(error) : done()));
            if ('closeIdleConnections' in server) server.closeIdleConnections();
          }),
      }),
    );
    server.on('error', (error: NodeJS.ErrnoException) => {
      reject(
        error.code === 'EADDRINUSE'
          ? new ConflictError('PORT_TAKEN', `Port ${port} is taken by another program.`, {
              hint: 'Choose another with --port, or 0 for any free one.',
              cause: error,
            })
          : error,
      );
    });
  });
}
