import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { fieldAnswerSchema } from '../../schema/fieldAnswer.ts';
import { recordIdSchema } from '../../schema/recordId.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/fields/{id}/answers',
  summary: 'One answer for each planned crop of a field',
  request: { params: z.object({ id: recordIdSchema }), query: wordingSchema },
  responses: {
    200: {
      description: 'The answers, in the order of the plans',
      content: { 'application/json': { schema: z.array(fieldAnswerSchema) } },
    },
    ...problemResponses,
  },
});

export const fieldAnswersRoute = ({ desk }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(await desk.answers(context.req.valid('param').id, context.req.valid('query')), 200),
  );
