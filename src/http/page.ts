import { serveStatic } from '@hono/node-server/serve-static';
import type { OpenAPIHono } from '@hono/zod-openapi';

/** Serves the built page: hashed files for long, the page itself always fresh. */
export function servePage(app: OpenAPIHono, folder: string): void {
  app.use(
    '/*',
    serveStatic({
      root: folder,
      onFound: (path, context) => {
        const hashed = path.includes('assets');
        context.header('Cache-Control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    }),
  );
}
