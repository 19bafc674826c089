import { describe, expect, it } from 'vitest';
import { chooseInterval } from '../../src/catalogue/chooseInterval.ts';
import { MissingDataError } from '../../src/errors.ts';
import { MARKS, type Provenance } from '../../src/schema/provenance.ts';
import { catalogue, texts } from './loaded.ts';

const { actives, crops, cropGroups, intervals, countingWindows, sources, bioassay } = catalogue;
const sourceIds = new Set(sources.map(({ id }) => id));

/** Rows of the collected reference tables, less what data/README.md says is left out and why. */
const COUNTS = {
  actives: 42 + 19, // the table of residuals, and actives of which only label figures are held
  crops: 34 + 2, // those of the interval rows, and two cover crops
  intervals: 637 - 5, // five rows speak of a whole group of actives
  sources: 164 + 2, // and heaps of memory for crop facts and for bioassays
};
const GROUP_ROWS = [207, 208, 209, 210, 501];

function expectTraced({ mark, sources: cited }: Provenance, where: string): void {
  expect(MARKS, where).toContain(mark);
  expect(cited.length, where).toBeGreaterThan(0);
  for (const id of cited) expect(sourceIds.has(id), `${where}: ${id}`).toBe(true);
  // What rests on heaps of memory alone may not call itself seen, and the other way about.
  const memory = cited.every((id) => id.startsWith('M'));
  if (mark !== 'computed') expect(memory, where).toBe(mark === 'from memory');
}

describe('the catalogue in data/', () => {
  it('holds as many records as the reference, less the omissions that its README names', () => {
    expect(actives).toHaveLength(COUNTS.actives);
    expect(actives.filter(({ fieldHalfLifeDays }) => fieldHalfLifeDays !== null)).toHaveLength(42);
    expect(crops).toHaveLength(COUNTS.crops);
    expect(cropGroups).toHaveLength(6);
    expect(intervals).toHaveLength(COUNTS.intervals);
    expect(sources).toHaveLength(COUNTS.sources);
    expect(countingWindows).toHaveLength(10);
    const ids = new Set(intervals.map(({ rowId }) => rowId));
    expect(ids.size).toBe(intervals.length);
    const absent = Array.from({ length: 637 }, (_, i) => i + 1).filter((id) => !ids.has(id));
    expect(absent).toEqual(GROUP_ROWS);
    expect(new Set(actives.map(({ isoName }) => isoName.toLowerCase())).size).toBe(actives.length);
  });

  it('keeps the share of rows that were seen, and their countries', () => {
    const count = (of: (row: (typeof intervals)[number]) => boolean) => intervals.filter(of).length;
    expect(count(({ mark }) => mark === 'from memory')).toBe(143);
    expect(count(({ mark }) => mark === 'seen')).toBe(489);
    expect(count(({ country }) => country === 'AU')).toBe(128);
    expect(count(({ country }) => country === 'CA')).toBe(81);
    expect(count(({ country }) => country === 'US')).toBe(423);
    expect(count(({ kind }) => kind === 'field finding')).toBe(85);
  });

  it('traces every figure of every active, and every pH response, to a mark and to sources that exist', () => {
    for (const { isoName, provenance, ph } of actives) {
      for (const [figure, traced] of Object.entries(provenance)) {
        if (traced !== null) expectTraced(traced, `${isoName}, ${figure}`);
      }
      if (ph !== null) expectTraced(ph, `${isoName}, pH`);
    }
  });

  it('traces every crop, group, interval row, clause and counting window', () => {
    for (const { name, sensitivity, use } of crops) {
      if (sensitivity !== null) expectTraced(sensitivity, name);
      expectTraced(use, name);
    }
    for (const group of cropGroups) expectTraced(group, group.name);
    for (const window of countingWindows) expectTraced(window, window.id);
    for (const entry of bioassay) expectTraced(entry, entry.text);
    for (const { rowId, mark, source, clauses } of intervals) {
      expectTraced({ mark, sources: [source] }, `row ${rowId}`);
      for (const clause of clauses) {
        expectTraced(clause, `row ${rowId}, ${clause.kind}`);
        // A clause is as its row is, but for rates of active ingredient that were worked out from a product's.
        expect(clause.sources[0], `row ${rowId}`).toBe(source);
        const isConverted = clause.kind === 'rate' && clause.mark === 'computed';
        if (!isConverted) expect([clause.mark, clause.sources], `row ${rowId}`).toEqual([mark, [source]]);
      }
    }
  });

  it('cites in its texts no source that is not listed', () => {
    const { sources: _, ...rest } = texts;
    for (const [id] of Object.values(rest)
      .join('\n')
      .matchAll(/\b[SM]\d{2,3}\b/g)) {
      expect(sourceIds.has(id), id).toBe(true);
    }
  });

  it('has each typical half-life within its low and high', () => {
    for (const { isoName, fieldHalfLifeDays } of actives) {
      if (fieldHalfLifeDays === null) continue;
      const { typical, low, high } = fieldHalfLifeDays;
      expect(typical, isoName).toBeGreaterThanOrEqual(low ?? 0);
      expect(typical, isoName).toBeLessThanOrEqual(high ?? Number.POSITIVE_INFINITY);
    }
  });

  it('gives a top rate its basis, no lower than the usual rates', () => {
    for (const { isoName, topRateGramsPerHa, typicalRateGramsPerHa } of actives) {
      if (topRateGramsPerHa === null || typicalRateGramsPerHa === null) continue;
      expect(topRateGramsPerHa, isoName).toBeGreaterThanOrEqual(typicalRateGramsPerHa.high);
      expect(typicalRateGramsPerHa.low, isoName).toBeLessThanOrEqual(typicalRateGramsPerHa.high);
    }
  });

  it('lets clauses and rows agree: the bioassay, and the interval where the shorter end is not granted', () => {
    for (const { rowId, bioassay, clauses, minMonths, maxMonths, minDays, maxDays } of intervals) {
      const roles = clauses.flatMap((clause) => (clause.kind === 'bioassay' ? [clause.role] : []));
      const expected = { no: [], yes: ['required'], 'instead of the condition': ['alternative'] }[bioassay];
      expect(roles, `row ${rowId}`).toEqual(expected);
      for (const { grants, ifNot } of clauses) {
        if (grants !== 'short end') continue;
        expect(minMonths !== maxMonths || minDays !== maxDays, `row ${rowId}`).toBe(true);
        if (typeof ifNot === 'object') {
          expect('months' in ifNot ? ifNot.months : ifNot.days, `row ${rowId}`).toBe(maxMonths ?? maxDays);
        }
      }
    }
  });

  it('marks what people must mind with the actives of restricted use', () => {
    const handled = actives.filter(({ handling }) => handling !== null).map(({ isoName }) => isoName);
    expect(handled).toEqual(['2,4-D', 'acetochlor', 'atrazine', 'isoxaflutole', 'paraquat', 'picloram']);
    expect(actives.find(({ isoName }) => isoName === 'paraquat')?.handling).toMatch(/acute toxicity/);
  });

  it('answers every pair with an interval or with a reason why there is none', () => {
    let known = 0;
    for (const active of actives) {
      for (const crop of crops) {
        for (const country of ['US', 'CA'] as const) {
          try {
            const chosen = chooseInterval(catalogue, active, crop, country);
            expect(chosen.chosen).toMatchObject({ kind: 'label', country });
            known++;
          } catch (error) {
            expect(error).toBeInstanceOf(MissingDataError);
          }
        }
      }
    }
    expect(known).toBe(1432 + 14);
  });
});
