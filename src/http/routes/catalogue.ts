import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { catalogueList } from '../../app/catalogueView.ts';
import { catalogueListSchema } from '../../schema/catalogueView.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/catalogue',
  summary: 'Actives and crops of the catalogue at a glance',
  responses: {
    200: { description: 'The catalogue', content: { 'application/json': { schema: catalogueListSchema } } },
    ...problemResponses,
  },
});

export const catalogueRoute = ({ catalogue }: HttpDeps) =>
  new OpenAPIHono().openapi(route, (context) => context.json(catalogueList(catalogue), 200));
