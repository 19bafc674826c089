import type { Kept } from '../../app/fieldsDesk.ts';
import { readLabelEntry } from '../../app/labelBook.ts';
import {
  keptLabelSchema,
  type LabelEntry,
  labelEntrySchema,
  labelListSchema,
} from '../../schema/labelEntry.ts';
import type { HttpDeps } from '../deps.ts';
import { shelfRoutes } from '../shelfRoutes.ts';

export const labelsRoute = ({ desk }: HttpDeps) =>
  shelfRoutes({
    path: '/api/labels',
    noun: 'label entry',
    nouns: 'label entries',
    unknown: 'LABEL_UNKNOWN',
    shelf: desk.labels,
    recordSchema: labelEntrySchema,
    keptSchema: keptLabelSchema,
    listSchema: labelListSchema,
    read: (entry) => readLabelEntry(entry),
    show,
    showList: ({ kept, removed }) => ({
      labels: [...kept].sort((a, b) => a.record.name.localeCompare(b.record.name, 'en')).map(show),
      removed,
    }),
  });

const show = ({ record, ...rest }: Kept<LabelEntry>) => ({ ...rest, entry: record });
