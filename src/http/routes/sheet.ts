import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { sheet } from '../../app/sheet.ts';
import { askedQuestionSchema } from '../../schema/question.ts';
import { sheetSchema } from '../../schema/sheet.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/sheet',
  summary: 'One page for the grower and the file; refused until every interval is confirmed from a label',
  request: {
    query: wordingSchema,
    body: { required: true, content: { 'application/json': { schema: askedQuestionSchema } } },
  },
  responses: {
    200: { description: 'The sheet', content: { 'application/json': { schema: sheetSchema } } },
    ...problemResponses,
  },
});

export const sheetRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const wording = context.req.valid('query');
    return context.json(await sheet(context.req.valid('json'), { ...deps, wording }), 200);
  });
