import { serveStatic } from '@hono/node-server/serve-static';
import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';

/** Served from the page itself: no file, and no part of the interface. */
const isPlace = (path: string): boolean =>
  !path.includes('.') && path !== '/api' && !path.startsWith('/api/');

/**
 * Serves the built page: hashed files for long, the page itself always fresh. Every address of a place on it
 * (/weather, /catalogue/…) gets the page, which shows that place.
 */
export function servePage(app: OpenAPIHono, folder: string): void {
  const keepFor = (path: string, context: Context) =>
    context.header(
      'Cache-Control',
      path.includes('assets') ? 'public, max-age=31536000, immutable' : 'no-cache',
    );
  app.use('/*', serveStatic({ root: folder, onFound: keepFor }));
  const page = serveStatic({ root: folder, path: 'index.html', onFound: keepFor });
  app.get('/*', (context, next) => (isPlace(context.req.path) ? page(context, next) : next()));
}
