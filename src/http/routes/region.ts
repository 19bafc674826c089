import { createRoute, OpenAPIHono } from '@hono/zod-openapi';
import { regionRows } from '../../app/region.ts';
import { type RegionEvent, regionEventSchema, regionQuestionSchema } from '../../schema/region.ts';
import type { HttpDeps } from '../deps.ts';
import { unforeseenLine } from '../guard/logLine.ts';
import { problemOf } from '../problem.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/region',
  summary: 'One treatment, crop and date over many stations; rows as they come, one JSON object a line',
  request: {
    body: { required: true, content: { 'application/json': { schema: regionQuestionSchema } } },
  },
  responses: {
    200: {
      description:
        'A start, rows with how far they have come, and an end, or a refusal; leaving stops the work',
      content: { 'application/x-ndjson': { schema: regionEventSchema } },
    },
    ...problemResponses,
  },
});

export const regionRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const stop = new AbortController();
    const events = regionRows(context.req.valid('json'), deps, stop.signal);
    // What is wrong with the question shows before the first line, in the one error shape.
    const first = await events.next();
    return new Response(linesOf(first, events, stop, deps.log), {
      headers: { 'Content-Type': 'application/x-ndjson', 'Cache-Control': 'no-store' },
    }) as never;
  });

/** Events a line each, as fast as they are read; a reader who leaves stops the work. */
function linesOf(
  first: IteratorResult<RegionEvent>,
  events: AsyncGenerator<RegionEvent>,
  stop: AbortController,
  log: (line: string) => void,
): ReadableStream<Uint8Array> {
  const text = new TextEncoder();
  const lineOf = (event: RegionEvent) => text.encode(`${JSON.stringify(event)}\n`);
  let next: IteratorResult<RegionEvent> | null = first;
  return new ReadableStream({
    async pull(lines) {
      try {
        const { done, value } = next ?? (await events.next());
        next = null;
        if (done) lines.close();
        else lines.enqueue(lineOf(value));
      } catch (error) {
        if (stop.signal.aborted) return;
        const { status, problem } = problemOf(error);
        if (status >= 500) log(unforeseenLine(error));
        lines.enqueue(lineOf({ step: 'refused', problem }));
        lines.close();
      }
    },
    async cancel() {
      stop.abort();
      await events.return(undefined);
    },
  });
}
