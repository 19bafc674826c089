import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { cropByDate } from '../../app/cropByDate.ts';
import { cropGridQuestionSchema, cropGridSchema } from '../../schema/comparison.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/crops',
  summary: 'Crops by planting date after one treatment',
  request: {
    body: { required: true, content: { 'application/json': { schema: cropGridQuestionSchema } } },
  },
  responses: {
    200: {
      description: 'Odds of each crop on each date',
      content: { 'application/json': { schema: cropGridSchema } },
    },
    ...problemResponses,
  },
});

export const cropsRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(await cropByDate(context.req.valid('json'), deps), 200),
  );
