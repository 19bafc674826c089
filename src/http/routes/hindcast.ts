import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { hindcast } from '../../app/hindcast.ts';
import { outcomeTally } from '../../app/outcomeTally.ts';
import { askedHindcastSchema, hindcastSchema } from '../../schema/hindcast.ts';
import type { OutcomeTally } from '../../schema/outcomeTally.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/hindcast',
  summary: 'Odds given in past years, each left out in turn, against what its weather brought',
  request: {
    body: { required: true, content: { 'application/json': { schema: askedHindcastSchema } } },
  },
  responses: {
    200: {
      description: 'Scores, bands of odds and years',
      content: { 'application/json': { schema: hindcastSchema } },
    },
    ...problemResponses,
  },
});

export const hindcastRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) =>
    context.json(
      await hindcast(
        context.req.valid('json'),
        { ...deps, recorded: () => tallyOf(deps) },
        { signal: context.req.raw.signal },
      ),
      200,
    ),
  );

async function tallyOf(deps: HttpDeps): Promise<OutcomeTally> {
  const { kept } = await deps.desk.fields.list();
  const fields = kept.map(({ record }) => record);
  return outcomeTally(fields, await deps.weather.stations(), deps);
}
