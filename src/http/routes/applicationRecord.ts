import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { recordIdSchema } from '../../schema/recordId.ts';
import { applicationRecordSchema } from '../../schema/restrictedUse.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/fields/{id}/record/{treatmentId}',
  summary: 'The record of a restricted-use application, ready to print, with what is missing of it',
  request: { params: z.object({ id: recordIdSchema, treatmentId: recordIdSchema }), query: wordingSchema },
  responses: {
    200: { description: 'The record', content: { 'application/json': { schema: applicationRecordSchema } } },
    ...problemResponses,
  },
});

export const applicationRecordRoute = ({ desk }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const { id, treatmentId } = context.req.valid('param');
    return context.json(await desk.applicationRecord(id, treatmentId, context.req.valid('query')), 200);
  });
