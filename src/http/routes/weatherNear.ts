import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { nearestStations } from '../../app/nearestStations.ts';
import { sayIn } from '../../app/say.ts';
import { soughtPlace } from '../../app/soughtPlace.ts';
import { nearestStationsSchema } from '../../schema/place.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const number = (low: number, high: number, description: string, unit: string) =>
  z.coerce.number().min(low).max(high).optional().meta({ description, unit });

const querySchema = wordingSchema.extend({
  lat: number(-90, 90, 'Latitude', '°'),
  lon: number(-180, 180, 'Longitude, east positive', '°'),
  county: z.string().min(1).max(80).optional().meta({
    description: 'US county with its state, such as "Gallatin, MT", or its five-digit code',
  }),
  elevation: number(-500, 9000, 'Height of the field above sea level', 'm'),
  most: z.coerce
    .number()
    .int()
    .min(1)
    .max(100)
    .optional()
    .meta({ description: 'Stations to list; 10 where absent' }),
});

const route = createRoute({
  method: 'get',
  path: '/api/weather/near',
  summary: 'Stations around a point or a US county, and which of them to take',
  request: { query: querySchema },
  responses: {
    200: {
      description: 'Stations, nearest first',
      content: { 'application/json': { schema: nearestStationsSchema } },
    },
    ...problemResponses,
  },
});

export const weatherNearRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const { units, dates, most, ...given } = context.req.valid('query');
    const place = await soughtPlace(
      given,
      deps.counties,
      'Give lat=45.7 and lon=-111, or county=Gallatin, MT.',
    );
    const say = sayIn({ units, dates });
    return context.json(nearestStations(await deps.weather.stations(), place, most, say), 200);
  });
