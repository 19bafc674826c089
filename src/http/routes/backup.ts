import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { backupSchema } from '../../schema/backup.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/backup',
  summary: 'Everything that is kept, every version, in one document',
  responses: {
    200: { description: 'The backup', content: { 'application/json': { schema: backupSchema } } },
    ...problemResponses,
  },
});

export const backupRoute = ({ desk }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const all = await desk.backup();
    return context.json(all, 200, {
      'Content-Disposition': `attachment; filename="drywake-backup-${all.madeAt.slice(0, 10)}.json"`,
    });
  });
