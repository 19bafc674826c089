import { describe, expect, it } from 'vitest';
import { chooseInterval } from '../../src/catalogue/chooseInterval.ts';
import { findActive } from '../../src/catalogue/findActive.ts';
import { findCrop } from '../../src/catalogue/findCrop.ts';
import type { IntervalRow } from '../../src/schema/catalogue.ts';
import { catalogue } from './loaded.ts';

const active = findActive(catalogue, 'flumioxazin');
const crop = findCrop(catalogue, 'lentil');
const [pattern] = catalogue.intervals.filter((row) => row.active === 'flumioxazin' && row.crop === 'lentil');

/** Chooses among rows for flumioxazin and lentil that differ from a real one as told. */
function choose(...changes: Partial<IntervalRow>[]) {
  const intervals = changes.map((change, i) => ({
    ...pattern,
    mark: 'seen' as const,
    ...change,
    rowId: i + 1,
  }));
  return chooseInterval({ ...catalogue, intervals }, active, crop);
}

describe('chooseInterval', () => {
  it('takes the longer end of a range and says that there is one', () => {
    const chosen = choose({ minMonths: 3, maxMonths: 4 });
    expect(chosen).toMatchObject({ months: 4, days: 0, fromMemory: false, atLeast: false });
    expect(chosen.disagreement).toBe(
      'The source gives 3 months to 4 months from flumioxazin to lentil; the longest is used.',
    );
  });

  it('takes the longest of several rows, keeps all, and says that they differ', () => {
    const chosen = choose(
      { minMonths: 9, maxMonths: 9 },
      { minMonths: 10.5, maxMonths: 12, mark: 'from memory' },
      { minMonths: null, maxMonths: null, minDays: 60, maxDays: 60 },
    );
    expect(chosen).toMatchObject({ months: 12, days: 0, fromMemory: true });
    expect(chosen.chosen.rowId).toBe(2);
    expect(chosen.rows).toHaveLength(3);
    expect(chosen.disagreement).toContain('Sources give 60 days to 12 months');
  });

  it('compares months with days', () => {
    const inDays = { minMonths: null, maxMonths: null, minDays: 60, maxDays: 60 };
    expect(choose({ minMonths: 2, maxMonths: 2 }, inDays)).toMatchObject({ months: 2, days: 0 });
    expect(choose({ minMonths: 1, maxMonths: 1 }, inDays)).toMatchObject({ months: 0, days: 60 });
  });

  it('sees no disagreement where rows say the same, and prefers what was seen', () => {
    const chosen = choose(
      { minMonths: 9, maxMonths: 9, mark: 'from memory' },
      { minMonths: 9, maxMonths: 9 },
    );
    expect(chosen.disagreement).toBeNull();
    expect(chosen.fromMemory).toBe(false);
    expect(chosen.chosen.rowId).toBe(2);
  });

  it('lets only labels set the interval, and shows longer findings beside it', () => {
    const chosen = choose(
      { minMonths: 9, maxMonths: 9 },
      { minMonths: 24, maxMonths: 24, kind: 'field finding' },
      { minMonths: 4, maxMonths: 4, kind: 'advice' },
    );
    expect(chosen).toMatchObject({ months: 9, disagreement: null });
    expect(chosen.longerElsewhere.map(({ row, interval }) => [row.rowId, interval.months])).toEqual([
      [2, 24],
    ]);
    expect(() => choose({ minMonths: 24, maxMonths: 24, kind: 'field finding' })).toThrow(
      /No label interval/,
    );
  });

  it('counts half a month as 15 days', () => {
    expect(choose({ minMonths: 10.5, maxMonths: 10.5 })).toMatchObject({ months: 10, days: 15 });
  });

  it('says "at least" where the source gives no upper end', () => {
    expect(choose({ minMonths: 24, maxMonths: null })).toMatchObject({ months: 24, atLeast: true });
    expect(choose({ minMonths: 36, maxMonths: 48 }, { minMonths: 48, maxMonths: null })).toMatchObject({
      months: 48,
      atLeast: true,
    });
  });

  it('keeps rows without a length, and their call for a bioassay', () => {
    const chosen = choose(
      { minMonths: 4, maxMonths: 4 },
      { minMonths: null, maxMonths: null, bioassay: 'yes' },
    );
    expect(chosen).toMatchObject({ months: 4, bioassay: true, disagreement: null });
    expect(chosen.rows).toHaveLength(2);
  });

  it('has no interval where no row gives a length, and says what to do', () => {
    const code = 'INTERVAL_MISSING';
    const hint = expect.stringContaining('--interval');
    expect(() => choose()).toThrow(
      expect.objectContaining({
        code,
        kind: 'missing-data',
        hint,
        message: 'No label interval is known from flumioxazin to lentil: read your label.',
      }),
    );
    expect(() => choose({ minMonths: null, maxMonths: null, bioassay: 'yes' })).toThrow(
      expect.objectContaining({ code, hint, message: expect.stringContaining('field bioassay') }),
    );
  });

  it('lets only rows of the field’s country set it, and shows the others', () => {
    const chosen = choose({ minMonths: 9, maxMonths: 9 }, { minMonths: 24, maxMonths: 24, country: 'AU' });
    expect(chosen).toMatchObject({ months: 9, disagreement: null });
    expect(chosen.elsewhere).toEqual([
      'Labels of Australia give 24 months; they set no date for your field.',
    ]);
    const canadian = { minMonths: 11, maxMonths: 11, country: 'CA' as const };
    expect(() => choose(canadian)).toThrow(
      'read your label. Labels of Canada give 11 months; they set no date for your field.',
    );
    const rows = [{ ...pattern, ...canadian }];
    expect(chooseInterval({ ...catalogue, intervals: rows }, active, crop, 'CA')).toMatchObject({
      months: 11,
    });
  });

  it('never takes a row for tolerant varieties', () => {
    const tolerant = { minMonths: 0, maxMonths: 0, variety: 'tolerant' as const };
    expect(() => choose(tolerant)).toThrow(/No label interval/);
    expect(choose(tolerant, { minMonths: 9, maxMonths: 9 })).toMatchObject({ months: 9, disagreement: null });
  });

  it('falls back on the crop’s group, then on ready mixes, then on the line for unnamed crops, and says so', () => {
    const unnamed = { crop: 'any crop not named on the label', minMonths: 18, maxMonths: 18 };
    const mix = { partners: ['clopyralid'], minMonths: 12, maxMonths: 12 };
    const group = { crop: 'pulses', minMonths: 6, maxMonths: 6 };
    const own = { minMonths: 4, maxMonths: 4 };
    expect(choose(unnamed, mix, group, own)).toMatchObject({ months: 4, fallBack: null });
    expect(choose(unnamed, mix, group, own).elsewhere[0]).toMatch(
      /^Ready mixes with it ask for longer: 12 months/,
    );
    expect(choose(unnamed, mix, group)).toMatchObject({
      months: 6,
      fallBack: 'No row names lentil; the line for pulses stands in for it.',
    });
    expect(choose(unnamed, mix).fallBack).toContain('a ready mix with clopyralid stands in');
    expect(choose(unnamed, mix).months).toBe(12);
    expect(choose(unnamed).fallBack).toContain('crops that it does not name');
    expect(choose(unnamed).months).toBe(18);
  });

  it('does not fall back past a row that asks for a bioassay in place of a length', () => {
    const unnamed = { crop: 'any crop not named on the label', minMonths: 18, maxMonths: 18 };
    expect(() => choose(unnamed, { minMonths: null, maxMonths: null, bioassay: 'yes' })).toThrow(/bioassay/);
  });

  it('finds the disagreements of the real rows', () => {
    const real = (a: string, c: string, country: 'US' | 'CA' = 'US') =>
      chooseInterval(catalogue, findActive(catalogue, a), findCrop(catalogue, c), country);
    expect(real('imazamox', 'canola')).toMatchObject({ months: 26, fromMemory: false });
    expect(real('imazamox', 'canola').elsewhere[0]).toContain('Labels of Canada give 11 months');
    expect(real('imazamox', 'canola', 'CA')).toMatchObject({ months: 11 });
    expect(real('imazethapyr', 'sugarbeet')).toMatchObject({ months: 40, atLeast: true, bioassay: true });
    expect(real('flumioxazin', 'lentil')).toMatchObject({ months: 4, days: 0, fromMemory: true });
    expect(real('clopyralid', 'barley')).toMatchObject({ months: 0, days: 0 });
    expect(real('flumioxazin', 'wheat')).toMatchObject({ months: 0, days: 60, disagreement: null });
    expect(real('sulfosulfuron', 'sorghum').disagreement).toContain('3 months to 22 months');
    expect(real('dicamba', 'soybean')).toMatchObject({ months: 0, days: 28 });
    expect(real('clomazone', 'winter wheat')).toMatchObject({ months: 16 });
    expect(real('pendimethalin', 'winter wheat')).toMatchObject({ months: 4 });
    expect(real('pendimethalin', 'wheat')).toMatchObject({ months: 12 });
    expect(real('picloram', 'lentil').fallBack).toContain('broadleaf crops');
    expect(() => real('quinclorac', 'lentil', 'CA')).toThrow(/United States give 24 months, from memory/);
    expect(() => real('imazamox', 'lentil', 'CA')).toThrow(/No label interval/);
    expect(() => real('chlorsulfuron', 'sunflower')).toThrow(/bioassay/);
  });
});
