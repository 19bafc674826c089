import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { stationExtentSchema } from '../../schema/weather.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/stations',
  summary: 'Stations whose records can be asked',
  responses: {
    200: {
      description: 'All stations, by id',
      content: { 'application/json': { schema: z.strictObject({ stations: z.array(stationExtentSchema) }) } },
    },
    ...problemResponses,
  },
});

export const stationsRoute = ({ weather }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json({ stations: [...(await weather.stations())] }, 200),
  );
