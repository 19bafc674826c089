import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import type { Kept, Shelf } from '../app/fieldsDesk.ts';
import { recordUnknown } from '../app/recordUnknown.ts';
import { InvalidInputError } from '../errors.ts';
import { recordIdSchema, removedSchema, versionSchema } from '../schema/recordId.ts';
import { problemResponses } from './problemResponses.ts';
import { presentVersion, versionHeadersSchema, versionOf, versionTag } from './versionHeaders.ts';

/** What is particular to the routes of one shelf. */
export interface ShelfRoutesOf<T extends { readonly id: string }> {
  /** Where they lie, such as /api/fields. */
  readonly path: string;
  /** What one record is called, such as "field", and what many are. */
  readonly noun: string;
  readonly nouns: string;
  /** Code of the refusal of an id that is not kept. */
  readonly unknown: string;
  readonly shelf: Shelf<T>;
  readonly recordSchema: z.ZodType<T>;
  readonly keptSchema: z.ZodType;
  readonly listSchema: z.ZodType;
  /** A record that was sent, judged beyond its shape. */
  read(record: T): T;
  /** A kept record as answers show it. */
  show(kept: Kept<T>): unknown;
  /** The list as answers show it. */
  showList(list: Awaited<ReturnType<Shelf<T>['list']>>): unknown;
}

const json = (description: string, schema: z.ZodType) => ({
  description,
  content: { 'application/json': { schema } },
});

/** List, read, keep, remove and undo: the routes of any shelf. */
export function shelfRoutes<T extends { readonly id: string }>(of: ShelfRoutesOf<T>): OpenAPIHono {
  const { path, noun, nouns, shelf } = of;
  const params = z.object({ id: recordIdSchema });
  const kept = (description: string) => ({ 200: json(description, of.keptSchema), ...problemResponses });
  const app = new OpenAPIHono();

  app.openapi(
    createRoute({
      method: 'get',
      path,
      summary: `All ${nouns}, and those that were removed`,
      responses: { 200: json(`All ${nouns}`, of.listSchema), ...problemResponses },
    }),
    async (context) => context.json(of.showList(await shelf.list()) as never, 200),
  );

  app.openapi(
    createRoute({
      method: 'get',
      path: `${path}/{id}`,
      summary: `One ${noun}`,
      request: { params },
      responses: kept(`The ${noun}, its version also as ETag`),
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const found = await shelf.get(id);
      if (found === null) {
        const all = (await shelf.list()).kept.map(({ record }) => record.id);
        const listed = `The list at ${path} shows each with its id.`;
        throw recordUnknown({ code: of.unknown, noun, listed }, id, all);
      }
      return context.json(of.show(found) as never, 200, { ETag: versionTag(found.version) });
    },
  );

  app.openapi(
    createRoute({
      method: 'put',
      path: `${path}/{id}`,
      summary: `Keep a ${noun}: a new one, or in the place of the version named`,
      request: {
        params,
        headers: versionHeadersSchema,
        body: { required: true, content: { 'application/json': { schema: of.recordSchema } } },
      },
      responses: kept(`The ${noun} as it is kept now`),
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      const version = versionOf(context.req.valid('header'));
      const record = of.read(context.req.valid('json') as T);
      if (record.id !== id) {
        throw new InvalidInputError(
          'ID_DIFFERS',
          `The ${noun} sent to "${id}" calls itself "${record.id}".`,
          {
            hint: 'Send it to the address of its own id.',
            details: { field: 'id' },
          },
        );
      }
      const put = await shelf.put(record, version);
      return context.json(of.show(put) as never, 200, { ETag: versionTag(put.version) });
    },
  );

  app.openapi(
    createRoute({
      method: 'delete',
      path: `${path}/{id}`,
      summary: `Remove a ${noun}; undo brings it back`,
      request: { params, headers: versionHeadersSchema },
      responses: {
        200: json('What was removed, with the version to undo', removedSchema),
        ...problemResponses,
      },
    }),
    async (context) => {
      const version = presentVersion(context.req.valid('header'));
      return context.json(await shelf.remove(context.req.valid('param').id, version), 200);
    },
  );

  app.openapi(
    createRoute({
      method: 'post',
      path: `${path}/{id}/undo`,
      summary: `Take the last change of a ${noun} back; a second time brings it again`,
      request: {
        params,
        body: {
          required: true,
          content: { 'application/json': { schema: z.strictObject({ version: versionSchema }) } },
        },
      },
      responses: kept(`The ${noun} as it is kept now`),
    }),
    async (context) => {
      const { version } = context.req.valid('json');
      const undone = await shelf.undo(context.req.valid('param').id, version);
      return context.json(of.show(undone) as never, 200, { ETag: versionTag(undone.version) });
    },
  );
  return app;
}
