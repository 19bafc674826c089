import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { catalogueCrop } from '../../app/catalogueCrop.ts';
import { cropViewSchema } from '../../schema/catalogueCropView.ts';
import { FIELD_COUNTRIES } from '../../schema/codes.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/catalogue/crop/{crop}',
  summary: 'One crop: what is known of it, and the actives before it by interval',
  request: {
    params: z.strictObject({
      crop: z.string().min(1).max(80).meta({ description: 'Crop, by any of its names' }),
    }),
    query: z.strictObject({
      country: z
        .enum(FIELD_COUNTRIES)
        .optional()
        .meta({ description: 'Country whose label rows count; US where absent' }),
    }),
  },
  responses: {
    200: { description: 'The crop', content: { 'application/json': { schema: cropViewSchema } } },
    ...problemResponses,
  },
});

export const catalogueCropRoute = ({ catalogue }: HttpDeps) =>
  new OpenAPIHono().openapi(route, (context) => {
    const { country } = context.req.valid('query');
    return context.json(catalogueCrop(catalogue, context.req.valid('param').crop, country), 200);
  });
