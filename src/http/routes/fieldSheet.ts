import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { recordIdSchema } from '../../schema/recordId.ts';
import { sheetSchema } from '../../schema/sheet.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/fields/{id}/sheet',
  summary: 'The page for the grower and the file, of one planned crop of a kept field',
  request: {
    params: z.object({ id: recordIdSchema }),
    query: wordingSchema.extend({
      plan: recordIdSchema.optional().meta({
        description: 'Planned crop by its id; may be left out where the field has one only',
      }),
    }),
  },
  responses: {
    200: { description: 'The sheet', content: { 'application/json': { schema: sheetSchema } } },
    ...problemResponses,
  },
});

export const fieldSheetRoute = ({ desk }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const { plan = null, ...wording } = context.req.valid('query');
    return context.json(await desk.sheet(context.req.valid('param').id, plan, wording), 200);
  });
