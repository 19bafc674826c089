import { type FieldRecord, fieldRecordSchema } from '../schema/fieldRecord.ts';
import { type LabelEntry, labelEntrySchema } from '../schema/labelEntry.ts';
import type { ShelfKind } from './shelf.ts';

/** The user's fields. */
export const FIELDS: ShelfKind<FieldRecord> = {
  table: 'field',
  key: 'record',
  code: 'FIELD',
  noun: 'field',
  schema: fieldRecordSchema,
  nameOf: ({ farm, name }) => (farm === '' ? name : `${farm}, ${name}`),
};

/** The user's own label entries. */
export const LABELS: ShelfKind<LabelEntry> = {
  table: 'label',
  key: 'entry',
  code: 'LABEL',
  noun: 'label entry',
  schema: labelEntrySchema,
  nameOf: ({ name }) => name,
};
