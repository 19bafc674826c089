import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { MOST_FILE_BYTES } from '../../app/weatherInbox.ts';
import { InvalidInputError } from '../../errors.ts';
import { type ImportEvent, importEventSchema } from '../../schema/importEvents.ts';
import { readOptionsSchema } from '../../schema/readOptions.ts';
import type { HttpDeps } from '../deps.ts';
import { unforeseenLine } from '../guard/logLine.ts';
import { problemOf } from '../problem.ts';
import { problemResponses } from '../problemResponses.ts';

const PATH = '/api/weather/import';

const send = createRoute({
  method: 'post',
  path: PATH,
  summary: 'Import one weather file, sent as it is; progress line by line, one JSON object a line',
  request: {
    query: readOptionsSchema.extend({
      name: z.string().min(1).max(200).meta({ description: 'File name, by which messages call it' }),
    }),
    body: {
      required: true,
      description: `The file itself, at most ${MOST_FILE_BYTES / 1e6} MB`,
      content: { 'application/octet-stream': { schema: z.any().meta({ type: 'string', format: 'binary' }) } },
    },
  },
  responses: {
    200: {
      description: 'How far the import has come; the last line says what became of it',
      content: { 'application/x-ndjson': { schema: importEventSchema } },
    },
    ...problemResponses,
  },
});

const stop = createRoute({
  method: 'delete',
  path: PATH,
  summary: 'Stop the import under way; nothing of its file is kept',
  responses: {
    200: {
      description: 'Whether there was one to stop',
      content: { 'application/json': { schema: z.strictObject({ stopped: z.boolean() }) } },
    },
    ...problemResponses,
  },
});

export const weatherImportRoute = ({ inbox, log }: HttpDeps) =>
  new OpenAPIHono()
    .openapi(send, async (context) => {
      const { name, ...options } = context.req.valid('query');
      const { body, headers } = context.req.raw;
      if (headers.get('content-type') !== 'application/octet-stream' || body === null) {
        throw new InvalidInputError(
          'REQUEST_UNREADABLE',
          'A file is sent as application/octet-stream, as it is.',
          {
            hint: 'The interface’s own reference at /api says how.',
          },
        );
      }
      if (Number(headers.get('content-length')) > MOST_FILE_BYTES) throw tooLarge(name);
      const importIt = await inbox.take({ name, body, options });
      return new Response(linesOf(importIt, inbox.stop, log), {
        headers: { 'Content-Type': 'application/x-ndjson', 'Cache-Control': 'no-store' },
      }) as never;
    })
    .openapi(stop, (context) => context.json({ stopped: inbox.stop() }, 200));

/** Runs an import and writes what it tells, a line each; a reader who leaves stops it. */
function linesOf(
  importIt: (tell: (event: ImportEvent) => void) => Promise<void>,
  stopIt: () => void,
  log: (line: string) => void,
): ReadableStream<Uint8Array> {
  const text = new TextEncoder();
  let left = false;
  return new ReadableStream({
    async start(lines) {
      const tell = (event: ImportEvent) => {
        if (!left) lines.enqueue(text.encode(`${JSON.stringify(event)}\n`));
      };
      try {
        await importIt(tell);
      } catch (error) {
        const { status, problem } = problemOf(error);
        if (status >= 500) log(unforeseenLine(error));
        tell({ step: 'refused', problem });
      }
      if (!left) lines.close();
    },
    cancel() {
      left = true;
      stopIt();
    },
  });
}

const tooLarge = (name: string) =>
  new InvalidInputError('FILE_TOO_LARGE', `${name} is larger than ${MOST_FILE_BYTES / 1e6} MB.`, {
    hint: 'Import it with “drywake weather import”, which has no such limit.',
  });
