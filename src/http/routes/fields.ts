import { fieldListSchema, fieldRecordSchema, storedFieldSchema } from '../../schema/fieldRecord.ts';
import type { HttpDeps } from '../deps.ts';
import { shelfRoutes } from '../shelfRoutes.ts';

export const fieldsRoute = ({ desk }: HttpDeps) =>
  shelfRoutes({
    path: '/api/fields',
    noun: 'field',
    nouns: 'fields',
    unknown: 'FIELD_UNKNOWN',
    shelf: desk.fields,
    recordSchema: fieldRecordSchema,
    keptSchema: storedFieldSchema,
    listSchema: fieldListSchema,
    read: (record) => record,
    show: (kept) => kept,
    showList: ({ kept, removed }) => ({ fields: [...kept].sort(byFarm), removed }),
  });

interface Named {
  readonly record: { readonly farm: string; readonly name: string };
}

const byFarm = ({ record: a }: Named, { record: b }: Named): number =>
  a.farm.localeCompare(b.farm, 'en') || a.name.localeCompare(b.name, 'en', { numeric: true });
