import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { alternatives } from '../../app/alternatives.ts';
import { alternativesSchema } from '../../schema/alternatives.ts';
import { askedQuestionSchema } from '../../schema/question.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/alternatives',
  summary: 'Other crops, dates and residuals, and what overlap and soil pH change',
  request: {
    body: { required: true, content: { 'application/json': { schema: askedQuestionSchema } } },
  },
  responses: {
    200: {
      description: 'What else could be done',
      content: { 'application/json': { schema: alternativesSchema } },
    },
    ...problemResponses,
  },
});

export const alternativesRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(await alternatives(context.req.valid('json'), deps), 200),
  );
