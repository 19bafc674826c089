import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { assertAskable } from '../../app/askedRows.ts';
import { batch } from '../../app/batch.ts';
import { batchTable } from '../../app/batchTable.ts';
import { readFieldList } from '../../app/fieldList.ts';
import { csvOf } from '../../app/flatTable.ts';
import { InvalidInputError } from '../../errors.ts';
import { type BatchEvent, batchEventSchema } from '../../schema/batchEvents.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';
import { toldLines } from '../toldLines.ts';

const csv = { 'text/csv': { schema: z.string().meta({ description: 'CSV text, UTF-8' }) } };

const send = createRoute({
  method: 'post',
  path: '/api/batch',
  summary: 'A list of fields as CSV, answered and ranked; progress line by line, one JSON object a line',
  request: {
    query: z.strictObject({
      name: z
        .string()
        .min(1)
        .max(200)
        .default('the list')
        .meta({ description: 'File name, by which messages call it' }),
    }),
    body: { required: true, content: csv },
  },
  responses: {
    200: {
      description:
        'A start, how far it has come, and an end with all rows, or a refusal; leaving stops the work',
      content: { 'application/x-ndjson': { schema: batchEventSchema } },
    },
    ...problemResponses,
  },
});

export const batchRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(send, async (context) => {
    if (!/^text\/csv\b/.test(context.req.header('content-type') ?? '')) {
      throw new InvalidInputError('REQUEST_UNREADABLE', 'A list is sent as text/csv, as it is.', {
        hint: 'The interface’s own reference at /api says how.',
      });
    }
    const list = readFieldList(await context.req.text(), context.req.valid('query').name);
    // What is wrong with the list shows before the first line, in the one error shape.
    assertAskable(list, {});
    const stop = new AbortController();
    return toldLines<BatchEvent>({
      log: deps.log,
      stop: () => stop.abort(),
      work: async (tell) => {
        tell({ step: 'start', of: list.rows.length });
        await letGo();
        const progress = (done: number, of: number) => tell({ step: 'progress', done, of });
        const result = await batch(list, {}, deps, { progress, signal: stop.signal });
        tell({ step: 'end', batch: result, csv: csvOf(batchTable(list.columns, result.model), result.rows) });
      },
    }) as never;
  });

/** Lets what was told out before long work. */
const letGo = () => new Promise<void>((resolve) => setImmediate(resolve));
