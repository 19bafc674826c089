import { LABEL_TABLE } from '../../app/tables/labelTable.ts';
import type { HttpDeps } from '../deps.ts';
import { tableRoutes } from '../tableRoutes.ts';

export const labelsTableRoute = ({ desk }: HttpDeps) =>
  tableRoutes({ path: '/api/labels.csv', nouns: 'label entries', shape: LABEL_TABLE, shelf: desk.labels });
