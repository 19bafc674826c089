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
    const [weather, fields] = await Promise.all([weatherState(deps), fieldsState(deps)]);
    const isReady = weather.state === 'ready' && fields.state === 'ready';
    const status: Health['status'] = isReady ? 'ok' : 'degraded';
    return context.json({ status, version: deps.version, weather, fields }, 200);
  });

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function weatherState({ weather }: HttpDeps): Promise<Health['weather']> {
  try {
    return { state: 'ready', stations: (await weather.stations()).length, message: null };
  } catch (error) {
    return { state: 'unreadable', stations: 0, message: messageOf(error) };
  }
}

async function fieldsState({ desk }: HttpDeps): Promise<Health['fields']> {
  try {
    const [fields, labels] = await Promise.all([desk.fields.count(), desk.labels.count()]);
    return { state: 'ready', fields, labels, message: null };
  } catch (error) {
    return { state: 'unreadable', fields: 0, labels: 0, message: messageOf(error) };
  }
}
