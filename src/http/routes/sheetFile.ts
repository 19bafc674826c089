import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { fieldUnknown } from '../../app/fieldsDesk.ts';
import { oneFile } from '../../app/oneFile/oneFile.ts';
import { askedQuestionSchema } from '../../schema/question.ts';
import { recordIdSchema } from '../../schema/recordId.ts';
import { wordingSchema } from '../../schema/wording.ts';
import type { HttpDeps } from '../deps.ts';
import { problemResponses } from '../problemResponses.ts';

const route = createRoute({
  method: 'post',
  path: '/api/sheet/file',
  summary: 'The answer as one HTML file that opens without any server; refused as the sheet is',
  request: {
    query: wordingSchema.extend({
      field: recordIdSchema
        .optional()
        .meta({ description: 'Kept field whose farm, name and size stand on it' }),
    }),
    body: { required: true, content: { 'application/json': { schema: askedQuestionSchema } } },
  },
  responses: {
    200: { description: 'The file', content: { 'text/html': { schema: z.string() } } },
    ...problemResponses,
  },
});

export const sheetFileRoute = (deps: HttpDeps) =>
  new OpenAPIHono().openapi(route, async (context) => {
    const { field, ...wording } = context.req.valid('query');
    const kept = field === undefined ? null : await deps.desk.fields.get(field);
    if (field !== undefined && kept === null) {
      throw fieldUnknown(field, (await deps.desk.fields.list()).kept);
    }
    const { name, html } = await oneFile(
      context.req.valid('json'),
      { ...deps, wording },
      {
        madeAt: deps.clock(),
        field: kept?.record ?? null,
      },
    );
    // A file to keep, never a page of this server.
    context.header('Content-Disposition', `attachment; filename="${name}"`);
    return context.html(html, 200);
  });
