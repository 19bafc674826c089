import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { sheet } from '../../app/sheet.ts';
import { askedQuestionSchema } from '../../schema/question.ts';
import { sheetSchema } from '../../schema/sheet.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/sheet',
  summary: 'One page for the grower and the file; refused until every interval is confirmed from a label',
  request: {
    query: z.strictObject({
      units: z
        .enum(['us', 'metric'])
        .optional()
        .meta({ description: 'Units of its words; US units where absent' }),
    }),
    body: { required: true, content: { 'application/json': { schema: askedQuestionSchema } } },
  },
  responses: {
    200: { description: 'The sheet', content: { 'application/json': { schema: sheetSchema } } },
    ...problemResponses,
  },
});

export const sheetRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const { units = 'us' } = context.req.valid('query');
    return context.json(await sheet(context.req.valid('json'), deps, units), 200);
  });
