import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import type { Shelf } from '../app/fieldsDesk.ts';
import { importTable } from '../app/tables/importTable.ts';
import type { TableShape } from '../app/tables/tableShape.ts';
import { writeTable } from '../app/tables/writeTable.ts';
import { InvalidInputError } from '../errors.ts';
import { tableImportSchema } from '../schema/tableImport.ts';
import { problemResponses } from './problemResponses.ts';

/** Marks the text as UTF-8 for spreadsheets, which else take it for another. */
const BYTE_ORDER_MARK = '\uFEFF';

/** What is particular to the routes of one table. */
export interface TableRoutesOf<T extends { readonly id: string }> {
  /** Where they lie, such as /api/fields.csv. */
  readonly path: string;
  readonly nouns: string;
  readonly shape: TableShape<T>;
  readonly shelf: Shelf<T>;
}

/** Out and in as CSV: the routes of any table. */
export function tableRoutes<T extends { readonly id: string }>({
  path,
  nouns,
  shape,
  shelf,
}: TableRoutesOf<T>): OpenAPIHono {
  const csv = { 'text/csv': { schema: z.string().meta({ description: 'CSV text, UTF-8' }) } };
  const app = new OpenAPIHono();
  app.openapi(
    createRoute({
      method: 'get',
      path,
      summary: `All ${nouns} as a CSV table`,
      request: {
        query: z.strictObject({
          units: z
            .enum(['metric', 'us'])
            .default('metric')
            .meta({ description: 'Units of amounts; the heads of the columns say them' }),
        }),
      },
      responses: { 200: { description: 'The table', content: csv }, ...problemResponses },
    }),
    async (context) => {
      const { kept } = await shelf.list();
      const table = writeTable(
        kept.map(({ record }) => record),
        shape,
        context.req.valid('query').units,
      );
      return new Response(BYTE_ORDER_MARK + table, {
        headers: {
          'Content-Type': 'text/csv; charset=utf-8',
          'Content-Disposition': `attachment; filename="drywake-${path.split('/').at(-1)}"`,
          'Cache-Control': 'no-store',
        },
      }) as never;
    },
  );
  app.openapi(
    createRoute({
      method: 'post',
      path,
      summary: `Keep the ${nouns} of a CSV table; rows at fault are told and stop no other`,
      request: { body: { required: true, content: csv } },
      responses: {
        200: {
          description: 'What became of its rows',
          content: { 'application/json': { schema: tableImportSchema } },
        },
        ...problemResponses,
      },
    }),
    async (context) => {
      if (!/^text\/csv\b/.test(context.req.header('content-type') ?? '')) {
        throw new InvalidInputError('REQUEST_UNREADABLE', 'A table is sent as text/csv, as it is.', {
          hint: 'The interface’s own reference at /api says how.',
        });
      }
      return context.json(await importTable(await context.req.text(), shape, shelf), 200);
    },
  );
  return app;
}
