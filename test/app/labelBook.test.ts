import { describe, expect, it } from 'vitest';
import { readLabelEntry } from '../../src/app/labelBook.ts';
import { InvalidInputError } from '../../src/errors.ts';
import { labelListSchema } from '../../src/schema/labelEntry.ts';

const given = {
  id: 'shed-one',
  name: 'Shed one (invented)',
  actives: [{ name: 'flumioxazin', rateGramsPerHa: 107 }],
  intervals: [{ crop: 'lentil', interval: '4 months' }],
  labelVersion: 'invented 2026',
  enteredOn: '2026-08-01',
};

const refusalOf = (entry: unknown): InvalidInputError => {
  try {
    readLabelEntry(entry);
  } catch (error) {
    if (error instanceof InvalidInputError) return error;
    throw error;
  }
  throw new Error('the entry was taken');
};

describe('a label entry as given', () => {
  it('is read with its defaults, and fits the list of entries', () => {
    const entry = readLabelEntry(given);
    expect(entry.intervals).toEqual([{ crop: 'lentil', interval: '4 months', clauses: [], conditions: '' }]);
    expect(entry.note).toBe('');
    const kept = { version: 1, entry, canUndo: false, removed: false };
    expect(labelListSchema.parse({ labels: [kept], removed: [] }).labels).toHaveLength(1);
  });

  it('is refused where an interval cannot be read, naming crop and field', () => {
    const error = refusalOf({ ...given, intervals: [{ crop: 'lentil', interval: 'a while' }] });
    expect(error.code).toBe('LABEL_UNREADABLE');
    expect(error.message).toContain('lentil');
    expect(error.details).toEqual({ field: 'intervals.0.interval' });
  });

  it('is refused where an active or a crop stands twice, or the id cannot stand in an address', () => {
    const twice = { ...given, actives: [{ name: 'flumioxazin' }, { name: ' Flumioxazin' }] };
    expect(refusalOf(twice).message).toContain('an active stands twice');
    const crops = [...given.intervals, { crop: 'Lentil', interval: '5 months' }];
    expect(refusalOf({ ...given, intervals: crops }).message).toContain('a crop stands twice');
    expect(refusalOf({ ...given, id: '../etc' }).details).toEqual({ field: 'id' });
  });
});
