import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { answerField } from '../../app/answerField.ts';
import { answerSchema } from '../../schema/answer.ts';
import { askedQuestionSchema } from '../../schema/question.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/odds',
  summary: 'Odds, dates and reasons for one field, treatment, crop and planting date',
  request: {
    query: wordingSchema.extend({
      with: z.enum(['season']).optional().meta({ description: 'Add the curves and rain that charts need' }),
    }),
    body: { required: true, content: { 'application/json': { schema: askedQuestionSchema } } },
  },
  responses: {
    200: { description: 'The answer', content: { 'application/json': { schema: answerSchema } } },
    ...problemResponses,
  },
});

export const oddsRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const { with: extra, ...wording } = context.req.valid('query');
    const answer = await answerField(
      context.req.valid('json'),
      { ...deps, wording },
      { season: extra === 'season' },
    );
    return context.json(answer, 200);
  });
