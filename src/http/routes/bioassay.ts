import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { bioassayGuide } from '../../app/bioassayGuide.ts';
import { sayIn } from '../../app/say.ts';
import { bioassayGuideSchema } from '../../schema/bioassay.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/bioassay',
  summary: 'How to run and read a field bioassay for one residual before one crop',
  request: {
    query: wordingSchema.extend({
      residual: z.string().min(1).max(80).meta({ description: 'Active ingredient, ISO common name' }),
      crop: z.string().min(1).max(80).meta({ description: 'Rotation crop' }),
    }),
  },
  responses: {
    200: { description: 'The guide', content: { 'application/json': { schema: bioassayGuideSchema } } },
    ...problemResponses,
  },
});

export const bioassayRoute = ({ catalogue }: HttpDeps) =>
  new OpenAPIHono().openapi(route, (context) => {
    const { residual, crop, ...wording } = context.req.valid('query');
    return context.json(bioassayGuide(catalogue, residual, crop, sayIn(wording)), 200);
  });
