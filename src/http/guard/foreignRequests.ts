import type { MiddlewareHandler } from 'hono';
import { DrywakeError } from '../../errors.ts';
import type { ServerGuard } from './serverGuard.ts';

/** Names of this computer. */
const OWN_NAMES = ['127.0.0.1', 'localhost', '[::1]'];

/** Methods that change nothing and carry no body. */
const READING = new Set(['GET', 'HEAD']);

/**
 * Refuses requests under a name that only points here (rebinding), and whatever pages of other origins send. Browsers name
 * a page's origin with every such request; a program, which names none, is let through.
 */
export function foreignRequests({ names }: Pick<ServerGuard, 'names'>): MiddlewareHandler {
  const ownNames = new Set([...OWN_NAMES, ...names.map(bracketed)]);
  return async ({ req }, next) => {
    const { host, hostname } = new URL(req.url);
    if (!ownNames.has(hostname)) {
      throw new DrywakeError('conflict', 'HOST_REFUSED', `The server does not go by the name ${hostname}.`, {
        hint: 'Open the address that “drywake serve” prints.',
      });
    }
    const origin = req.header('origin');
    const site = req.header('sec-fetch-site');
    const foreign =
      (origin !== undefined && origin !== `http://${host}`) ||
      (site !== undefined && site !== 'same-origin' && site !== 'none');
    if (foreign && !READING.has(req.method)) {
      throw new DrywakeError(
        'conflict',
        'ORIGIN_REFUSED',
        'Only the program’s own page may ask it to do anything.',
        { hint: 'Open the page at the address that “drywake serve” prints, and do it there.' },
      );
    }
    await next();
  };
}

/** An address of version 6 stands in brackets in a URL. */
const bracketed = (name: string): string => (name.includes(':') ? `[${name}]` : name.toLowerCase());
