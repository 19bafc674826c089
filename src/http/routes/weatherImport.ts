import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { MOST_FILE_BYTES } from '../../app/weatherInbox.ts';
import { InvalidInputError } from '../../errors.ts';
import { type ImportEvent, importEventSchema } from '../../schema/importEvents.ts';
import { readOptionsSchema } from '../../schema/readOptions.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';
import { toldLines } from '../toldLines.ts';

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
      return toldLines<ImportEvent>({ work: importIt, stop: inbox.stop, log }) as never;
    })
    .openapi(stop, (context) => context.json({ stopped: inbox.stop() }, 200));

const tooLarge = (name: string) =>
  new InvalidInputError('FILE_TOO_LARGE', `${name} is larger than ${MOST_FILE_BYTES / 1e6} MB.`, {
    hint: 'Import it with “drywake weather import”, which has no such limit.',
  });
