import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { catalogueActive } from '../../app/catalogueView.ts';
import { activeViewSchema } from '../../schema/catalogueView.ts';
import { FIELD_COUNTRIES } from '../../schema/codes.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/catalogue/{active}',
  summary: 'One active: figures with marks and sources, and the crops by interval',
  request: {
    params: z.strictObject({ active: z.string().min(1).max(80).meta({ description: 'ISO common name' }) }),
    query: wordingSchema.extend({
      crop: z.string().min(1).max(80).optional().meta({ description: 'One crop, with every row behind it' }),
      country: z
        .enum(FIELD_COUNTRIES)
        .optional()
        .meta({ description: 'Country whose label rows count; US where absent' }),
    }),
  },
  responses: {
    200: { description: 'The active', content: { 'application/json': { schema: activeViewSchema } } },
    ...problemResponses,
  },
});

export const catalogueActiveRoute = ({ catalogue }: HttpDeps) =>
  new OpenAPIHono().openapi(route, (context) => {
    const { active } = context.req.valid('param');
    return context.json(catalogueActive(catalogue, active, context.req.valid('query')), 200);
  });
