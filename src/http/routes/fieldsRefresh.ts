import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { refreshSchema } from '../../schema/fieldAnswer.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/fields/refresh',
  summary: 'Answer all fields again and tell what has changed since the last time',
  request: {
    query: wordingSchema,
    body: {
      required: true,
      content: {
        'application/json': {
          schema: z.strictObject({
            fetch: z
              .boolean()
              .default(true)
              .meta({ description: 'Ask the public records service for newer weather first' }),
          }),
        },
      },
    },
  },
  responses: {
    200: { description: 'What has changed', content: { 'application/json': { schema: refreshSchema } } },
    ...problemResponses,
  },
});

export const fieldsRefreshRoute = ({ desk }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(await desk.refresh(context.req.valid('json').fetch, context.req.valid('query')), 200),
  );
