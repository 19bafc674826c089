import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { restoreRequestSchema, restoreResultSchema } from '../../schema/backup.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/restore',
  summary: 'Put a backup in the place of everything that is kept; what was there is kept as a backup',
  request: {
    body: { required: true, content: { 'application/json': { schema: restoreRequestSchema } } },
  },
  responses: {
    200: {
      description: 'What was restored',
      content: { 'application/json': { schema: restoreResultSchema } },
    },
    ...problemResponses,
  },
});

export const restoreRoute = ({ desk }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(await desk.restore(context.req.valid('json').backup), 200),
  );
