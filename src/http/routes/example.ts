import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { exampleSchema } from '../../schema/example.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/example',
  summary: 'The worked question of the first screen, invented',
  responses: {
    200: { description: 'Question and field', content: { 'application/json': { schema: exampleSchema } } },
    ...problemResponses,
  },
});

export const exampleRoute = ({ example }: HttpDeps) =>
  new OpenAPIHono().openapi(route, (context) => context.json(example, 200));
