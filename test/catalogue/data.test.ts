import { describe, expect, it } from 'vitest';
import { chooseInterval } from '../../src/catalogue/chooseInterval.ts';
import { MissingDataError } from '../../src/errors.ts';
import { MARKS, type Provenance } from '../../src/schema/catalogue.ts';
import { catalogue, texts } from './loaded.ts';

const { actives, crops, intervals, sources } = catalogue;
const sourceIds = new Set(sources.map(({ id }) => id));

function expectTraced({ mark, sources: cited }: Provenance, where: string): void {
  expect(MARKS, where).toContain(mark);
  expect(cited.length, where).toBeGreaterThan(0);
  for (const id of cited) expect(sourceIds.has(id), `${where}: ${id}`).toBe(true);
  // What rests on a heap of memory alone may not call itself seen, and the other way about.
  expect(
    cited.every((id) => id.startsWith('M')),
    where,
  ).toBe(mark === 'from memory');
}

describe('the catalogue in data/', () => {
  it('holds six actives and eight crops', () => {
    expect(actives.map(({ isoName }) => isoName)).toEqual([
      'chlorsulfuron',
      'clopyralid',
      'flumioxazin',
      'imazamox',
      'imazethapyr',
      'sulfentrazone',
    ]);
    expect(crops).toHaveLength(8);
    expect(intervals.length).toBeGreaterThan(70);
  });

  it('traces every figure of every active to a mark and to sources that exist', () => {
    for (const { isoName, provenance } of actives) {
      for (const [figure, traced] of Object.entries(provenance)) {
        if (traced !== null) expectTraced(traced, `${isoName}, ${figure}`);
      }
    }
  });

  it('traces every crop and every interval row', () => {
    for (const { name, sensitivityProvenance } of crops) expectTraced(sensitivityProvenance, name);
    for (const { rowId, mark, source } of intervals)
      expectTraced({ mark, sources: [source] }, `row ${rowId}`);
  });

  it('names no source that nothing uses, and none in a caution that is not listed', () => {
    const rest = texts.actives + texts.crops + texts.intervals;
    for (const id of sourceIds) expect(rest.includes(id), id).toBe(true);
    for (const [id] of rest.matchAll(/\b[SM]\d{2,3}\b/g)) expect(sourceIds.has(id), id).toBe(true);
  });

  it('has each typical half-life within its low and high', () => {
    for (const { isoName, fieldHalfLifeDays } of actives) {
      const { typical, low, high } = fieldHalfLifeDays;
      expect(typical, isoName).toBeGreaterThanOrEqual(low ?? 0);
      expect(typical, isoName).toBeLessThanOrEqual(high ?? Number.POSITIVE_INFINITY);
    }
  });

  it('keeps to the United States and Canada', () => {
    for (const { rowId, region } of intervals) expect(region, `row ${rowId}`).not.toMatch(/australia/i);
  });

  it('has a label interval for all pairs but those that its README names', () => {
    const without: string[] = [];
    for (const active of actives) {
      for (const crop of crops) {
        try {
          chooseInterval(catalogue, active, crop);
        } catch (error) {
          expect(error).toBeInstanceOf(MissingDataError);
          without.push(`${active.isoName} to ${crop.name}`);
        }
      }
    }
    expect(without.filter((pair) => !pair.startsWith('chlorsulfuron to '))).toEqual([
      'imazethapyr to lentil',
      'imazethapyr to field pea',
    ]);
    expect(without.filter((pair) => pair.startsWith('chlorsulfuron to '))).toHaveLength(crops.length);
  });
});
