import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { hindcast } from '../../app/hindcast.ts';
import { outcomeTally } from '../../app/outcomeTally.ts';
import { askedHindcastSchema, hindcastSchema } from '../../schema/hindcast.ts';
import { type HindcastEvent, hindcastEventSchema } from '../../schema/hindcastEvents.ts';
import type { OutcomeTally } from '../../schema/outcomeTally.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';
import { toldLines } from '../toldLines.ts';

/** Asked for in place of one answer by whoever wants to see how far the work has come. */
const LINES = 'application/x-ndjson';

const route = createRoute({
  method: 'post',
  path: '/api/hindcast',
  summary: 'Odds given in past years, each left out in turn, against what its weather brought',
  request: {
    body: { required: true, content: { 'application/json': { schema: askedHindcastSchema } } },
  },
  responses: {
    200: {
      description:
        'Scores, bands of odds and years; as lines, where these are accepted, with the years done told on the way',
      content: {
        'application/json': { schema: hindcastSchema },
        [LINES]: { schema: hindcastEventSchema },
      },
    },
    ...problemResponses,
  },
});

export const hindcastRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const question = context.req.valid('json');
    const around = { ...deps, recorded: () => tallyOf(deps) };
    if (context.req.header('accept') !== LINES)
      return context.json(await hindcast(question, around, { signal: context.req.raw.signal }), 200);
    const stop = new AbortController();
    return toldLines<HindcastEvent>({
      log: deps.log,
      stop: () => stop.abort(),
      work: async (tell) => {
        const progress = (done: number, of: number) => tell({ step: 'progress', done, of });
        const result = await hindcast(question, around, { progress, signal: stop.signal });
        tell({ step: 'end', hindcast: result });
      },
    }) as never;
  });

async function tallyOf(deps: HttpDeps): Promise<OutcomeTally> {
  const { kept } = await deps.desk.fields.list();
  const fields = kept.map(({ record }) => record);
  return outcomeTally(fields, await deps.weather.stations(), deps);
}
