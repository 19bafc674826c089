import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { fieldListTemplate } from '../../app/fieldList.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/batch/template.csv',
  summary: 'The head of a list of fields with one invented row',
  responses: {
    200: {
      description: 'The columns that mean something',
      content: { 'text/csv': { schema: z.string().meta({ description: 'CSV text, UTF-8' }) } },
    },
    ...problemResponses,
  },
});

export const batchTemplateRoute = () =>
  new OpenAPIHono().openapi(
    route,
    () =>
      new Response(fieldListTemplate(), {
        headers: {
          'Content-Type': 'text/csv; charset=utf-8',
          'Content-Disposition': 'attachment; filename="drywake-fields-template.csv"',
        },
      }) as never,
  );
