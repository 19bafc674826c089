import type { MiddlewareHandler } from 'hono';
import { DrywakeError } from '../errors.ts';

/** Names of this computer, the only one that the server listens on. */
const OWN_NAMES = new Set(['127.0.0.1', 'localhost', '[::1]']);

/**
 * Refuses what pages of other origins send. Browsers name the page's origin with every such request; a program on this
 * computer, which names none, is let through. A name that only points here (rebinding) is no name of this computer.
 */
export const sameOrigin: MiddlewareHandler = async ({ req }, next) => {
  const { host, hostname } = new URL(req.url);
  const origin = req.header('origin');
  const site = req.header('sec-fetch-site');
  const foreign =
    !OWN_NAMES.has(hostname) ||
    (origin !== undefined && origin !== `http://${host}`) ||
    (site !== undefined && site !== 'same-origin' && site !== 'none');
  if (foreign) {
    throw new DrywakeError(
      'conflict',
      'ORIGIN_REFUSED',
      'Only the program’s own page may reach its records or change its data.',
      {
        hint: 'Open the page at the address that “drywake serve” prints, and do it there.',
      },
    );
  }
  await next();
};
