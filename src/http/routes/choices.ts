import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { choicesSchema } from '../../schema/example.ts';
import { TEXTURE_CLASSES } from '../../schema/soil.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/choices',
  summary: 'What a question can choose from: residuals, crops, soils, stations',
  responses: {
    200: { description: 'All choices', content: { 'application/json': { schema: choicesSchema } } },
    ...problemResponses,
  },
});

export const choicesRoute = ({ weather, catalogue }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(
      {
        residuals: catalogue.actives.map(({ isoName, group, cautions }) => ({
          name: isoName,
          group: String(group),
          cautions,
        })),
        crops: catalogue.crops.map(({ name, aliases }) => ({ name, aliases })),
        soilClasses: [...TEXTURE_CLASSES],
        stations: [...(await weather.stations())],
      },
      200,
    ),
  );
