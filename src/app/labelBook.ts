import { parseInterval } from '../catalogue/parseInterval.ts';
import { InvalidInputError, MissingDataError } from '../errors.ts';
import { type LabelEntry, labelEntrySchema, type StoredLabel } from '../schema/labelEntry.ts';
import type { Shelf } from '../store/shelf.ts';
import { meantOf } from './meant.ts';
import { faultsOf } from './schemaRefusal.ts';

/** The user's own label entries, wherever they are kept. */
export interface LabelBook {
  /** All entries, by id. */
  labels(): Promise<readonly StoredLabel[]>;
  /** The entry of that id; null where there is none. */
  label(id: string): Promise<StoredLabel | null>;
}

/** The entries of a shelf as answers look them up. */
export const labelBookOf = (shelf: Pick<Shelf<LabelEntry>, 'list' | 'get'>): LabelBook => ({
  async labels() {
    const { kept } = await shelf.list();
    return kept.map(({ version, record }) => ({ version, entry: record }));
  },
  async label(id) {
    const kept = await shelf.get(id);
    return kept && { version: kept.version, entry: kept.record };
  },
});

/** A list of entries as answers look them up. */
export const labelsAsBook = (entries: readonly StoredLabel[]): LabelBook => ({
  labels: async () => entries,
  label: async (id) => entries.find(({ entry }) => entry.id === id) ?? null,
});

/**
 * An entry that can be used: its shape, and that every interval can be read.
 * @throws {InvalidInputError} LABEL_UNREADABLE, naming what is wrong
 */
export function readLabelEntry(given: unknown, where = 'The label entry'): LabelEntry {
  const result = labelEntrySchema.safeParse(given);
  if (!result.success) {
    const [{ field, message, hint }] = faultsOf(result.error.issues, given);
    throw unreadable(`${where}: ${message}`, field, hint);
  }
  for (const [index, line] of result.data.intervals.entries()) {
    for (const field of ['interval', 'foodFeedInterval'] as const) {
      try {
        parseInterval(line[field] ?? '0');
      } catch (error) {
        if (!(error instanceof InvalidInputError)) throw error;
        throw unreadable(`${where}, ${line.crop}: ${error.message}`, `intervals.${index}.${field}`);
      }
    }
  }
  return result.data;
}

const SHAPE = 'Give an id, a name, one active or more, and for each crop an interval such as "9 months".';

const unreadable = (message: string, field: string, hint = '') =>
  new InvalidInputError('LABEL_UNREADABLE', message, {
    hint: hint || SHAPE,
    details: { field },
  });

/** The refusal of an id that is not there. */
export const labelUnknown = (id: string, known: readonly string[]): MissingDataError =>
  new MissingDataError('LABEL_UNKNOWN', `There is no label entry "${id}".`, {
    hint:
      meantOf(id, known) ??
      (known.length > 0 ? `There is ${known.join(', ')}.` : 'No label has been entered yet.'),
    details: { field: 'labelEntry', id, known },
  });
