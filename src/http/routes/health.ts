import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { type Health, healthSchema } from '../../schema/example.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/health',
  summary: 'Whether the server can do its work',
  responses: {
    200: {
      description: 'State of the server and its records',
      content: { 'application/json': { schema: healthSchema } },
    },
    ...problemResponses,
  },
});

export const healthRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const weather = await weatherState(deps);
    const status: Health['status'] = weather.state === 'ready' ? 'ok' : 'degraded';
    return context.json({ status, version: deps.version, weather }, 200);
  });

async function weatherState({ weather }: HttpDeps): Promise<Health['weather']> {
  try {
    return { state: 'ready', stations: (await weather.stations()).length, message: null };
  } catch (error) {
    return {
      state: 'unreadable',
      stations: 0,
      message: error instanceof Error ? error.message : String(error),
    };
  }
}
