import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { checkStation } from '../../app/checkStation.ts';
import { stationCheckSchema } from '../../schema/stationCheck.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/weather/{station}/check',
  summary: 'What one station’s record is worth: completeness, gaps, oddities, the last twelve months',
  request: {
    params: z.strictObject({ station: z.string().min(1).max(80).meta({ description: 'Station id' }) }),
  },
  responses: {
    200: { description: 'The check', content: { 'application/json': { schema: stationCheckSchema } } },
    ...problemResponses,
  },
});

export const weatherCheckRoute = ({ weather }: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(checkStation(await weather.record(context.req.valid('param').station)), 200),
  );
