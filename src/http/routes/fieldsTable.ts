import { FIELD_TABLE } from '../../app/tables/fieldTable.ts';
import type { HttpDeps } from '../deps.ts';
import { tableRoutes } from '../tableRoutes.ts';

export const fieldsTableRoute = ({ desk }: HttpDeps) =>
  tableRoutes({ path: '/api/fields.csv', nouns: 'fields', shape: FIELD_TABLE, shelf: desk.fields });
