import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { compareResiduals } from '../../app/compareResiduals.ts';
import { comparisonQuestionSchema, comparisonSchema } from '../../schema/comparison.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/compare',
  summary: 'Every residual before one crop on one date: odds against weeks of weed control',
  request: {
    body: { required: true, content: { 'application/json': { schema: comparisonQuestionSchema } } },
  },
  responses: {
    200: {
      description: 'The residuals side by side',
      content: { 'application/json': { schema: comparisonSchema } },
    },
    ...problemResponses,
  },
});

export const compareRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(await compareResiduals(context.req.valid('json'), deps), 200),
  );
