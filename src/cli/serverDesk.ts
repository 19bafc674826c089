import { setTimeout as pause } from 'node:timers/promises';
import { z } from 'zod';
import type { FieldsDesk, Kept, Shelf } from '../app/fieldsDesk.ts';
import { ConflictError, DrywakeError, type ErrorKind } from '../errors.ts';
import { problemSchema } from '../schema/answer.ts';
import { backupSchema, restoreResultSchema } from '../schema/backup.ts';
import { fieldAnswerSchema, refreshSchema } from '../schema/fieldAnswer.ts';
import { fieldListSchema, storedFieldSchema } from '../schema/fieldRecord.ts';
import { keptLabelSchema, labelListSchema } from '../schema/labelEntry.ts';
import { removedSchema } from '../schema/recordId.ts';
import { applicationRecordSchema } from '../schema/restrictedUse.ts';
import { sheetSchema } from '../schema/sheet.ts';

/** Statuses of a server that asks to come back in a moment. */
const COME_BACK = new Set([429, 503]);

/** Family of a refusal by the status that it comes with. */
const kindOf = (status: number): ErrorKind =>
  status === 409 ? 'conflict' : status === 404 ? 'missing-data' : 'invalid-input';

interface Request {
  readonly method?: string;
  readonly body?: unknown;
  readonly headers?: Record<string, string>;
}

/** Asks a running server and reads what it answers. */
type Ask = <T>(schema: z.ZodType<T>, path: string, request?: Request) => Promise<T>;

/** Where a running server is, and what it asks everyone to show. */
export interface ServerAddress {
  /** Such as http://127.0.0.1:4717/. */
  readonly address: string;
  readonly token: string | null;
}

/** Times that a server which has too much to do is asked again. */
const MOST_ASKINGS = 60;

/** The fields and label entries of a running server. */
export function createServerDesk({ address, token }: ServerAddress): FieldsDesk {
  const once = (path: string, { method = 'GET', body, headers }: Request) =>
    fetch(new URL(path, address), {
      method,
      headers: {
        ...headers,
        ...(token !== null && { Authorization: `Bearer ${token}` }),
        ...(body !== undefined && { 'Content-Type': 'application/json' }),
      },
      ...(body !== undefined && { body: JSON.stringify(body) }),
    }).catch((cause: unknown) => {
      throw new ConflictError(
        'SERVER_SILENT',
        `The server at ${address}, which holds the fields, does not answer.`,
        {
          hint: 'Try again in a moment, or stop it and run the command without it.',
          cause,
        },
      );
    });
  const ask: Ask = async (schema, path, request = {}) => {
    let response = await once(path, request);
    for (let asked = 1; asked < MOST_ASKINGS && COME_BACK.has(response.status); asked++) {
      await response.arrayBuffer();
      await pause(1000 * Number(response.headers.get('retry-after') ?? 1));
      response = await once(path, request);
    }
    const given: unknown = await response.json();
    if (response.ok) return schema.parse(given);
    const { code, message, details, hint } = problemSchema.parse(given);
    if (response.status >= 500) throw new Error(`${message} ${hint}`);
    throw new DrywakeError(kindOf(response.status), code, message, { hint, details });
  };
  const fieldPath = (id: string, rest = '') => `/api/fields/${encodeURIComponent(id)}${rest}`;
  return {
    fields: shelfAt(ask, '/api/fields', storedFieldSchema, async () => {
      const { fields, removed } = await ask(fieldListSchema, '/api/fields');
      return { kept: fields, removed };
    }),
    labels: shelfAt(ask, '/api/labels', keptLabelSchema.transform(labelOf), async () => {
      const { labels, removed } = await ask(labelListSchema, '/api/labels');
      return { kept: labels.map(labelOf), removed };
    }),
    answers: (id, wording) => ask(z.array(fieldAnswerSchema), fieldPath(id, `/answers${queryOf(wording)}`)),
    applicationRecord: (id, treatmentId, wording) =>
      ask(
        applicationRecordSchema,
        fieldPath(id, `/record/${encodeURIComponent(treatmentId)}${queryOf(wording)}`),
      ),
    sheet: (id, planId, wording) =>
      ask(
        sheetSchema,
        fieldPath(id, `/sheet${queryOf({ ...wording, ...(planId !== null && { plan: planId }) })}`),
      ),
    refresh: (fetchNewer, wording) =>
      ask(refreshSchema, `/api/fields/refresh${queryOf(wording)}`, {
        method: 'POST',
        body: { fetch: fetchNewer },
      }),
    backup: () => ask(backupSchema, '/api/backup'),
    restore: (backup) =>
      ask(restoreResultSchema, '/api/restore', { method: 'POST', body: { replace: true, backup } }),
  };
}

/** A query with its question mark; empty where nothing is asked. */
function queryOf(asked: Readonly<Record<string, string>> = {}): string {
  const query = String(new URLSearchParams(asked));
  return query && `?${query}`;
}

const labelOf = ({ entry, ...rest }: z.output<typeof keptLabelSchema>) => ({ ...rest, record: entry });

function shelfAt<T extends { readonly id: string }>(
  ask: Ask,
  path: string,
  schema: z.ZodType<Kept<T>>,
  list: Shelf<T>['list'],
): Shelf<T> {
  const at = (id: string) => `${path}/${encodeURIComponent(id)}`;
  const match = (version: number | null): Record<string, string> =>
    version === null ? { 'If-None-Match': '*' } : { 'If-Match': `"${version}"` };
  return {
    list,
    count: async () => (await list()).kept.length,
    get: (id) =>
      ask(schema, at(id)).catch((error: unknown) => {
        if (error instanceof DrywakeError && error.kind === 'missing-data') return null;
        throw error;
      }),
    put: (record, version) =>
      ask(schema, at(record.id), { method: 'PUT', body: record, headers: match(version) }),
    remove: (id, version) => ask(removedSchema, at(id), { method: 'DELETE', headers: match(version) }),
    undo: (id, version) => ask(schema, `${at(id)}/undo`, { method: 'POST', body: { version } }),
  };
}
