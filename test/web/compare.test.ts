import { describe, expect, it } from 'vitest';
import type { Comparison, QuestionInput, ResidualRow } from '../../web/src/api/contract.ts';
import { csvOf } from '../../web/src/charts/csv.ts';
import { COMPARE, comparisonOf, namedRows, withRow } from '../../web/src/compare/compareAddress.ts';
import { FILE_COLUMNS, fileRows } from '../../web/src/compare/compareFiles.ts';
import {
  activationSentence,
  comparisonFinding,
  fittingWords,
  sayWeekRange,
  sayWeeks,
  tradeFinding,
} from '../../web/src/compare/compareWords.ts';
import { groupUnjudged } from '../../web/src/compare/groupUnjudged.ts';
import { picksOf, shownRows, togglePick } from '../../web/src/compare/picks.ts';
import { nextSort, sortRows } from '../../web/src/compare/sortRows.ts';
import { typedDates } from '../../web/src/units/dates.ts';

const question: QuestionInput = {
  station: 'demo-invented',
  residual: '2,4-D',
  appliedOn: '2026-08-14',
  crop: 'lentil',
  plantOn: '2027-05-10',
  interval: '9 months',
  halfLifeDays: 40,
  rateGramsPerHa: 560,
};

/** An invented row; weeks null where no half-life is held. */
function row(residual: string, odds: number | null, weeks: number | null, part: Partial<ResidualRow> = {}) {
  return {
    residual,
    labelEntry: null,
    group: '2',
    carryoverModelled: odds !== null,
    labelDate: '2026-12-14',
    clearDate: '2027-06-01',
    interval: {
      text: '4 months',
      months: 4,
      days: 0,
      lengthDays: 122,
      origin: 'catalogue',
      fromMemory: false,
      confirmed: false,
      disagreement: null,
      sources: ['A label, read'],
    },
    labelAllows: true,
    withinLimit: odds !== null && odds <= 0.1,
    oddsAtPlanting: odds,
    oddsRange: odds === null ? null : { low: odds / 2, high: Math.min(1, odds * 2), years: 30 },
    thirdOdds: odds === null ? null : { dry: odds, middle: odds, wet: odds },
    oddsAtLabelDate: odds,
    weeksOfControl: weeks === null ? null : { dry: weeks + 1, middle: weeks, wet: weeks - 1 },
    halfLife: null,
    ...part,
  } as ResidualRow;
}

const low = row('low', 0.04, 3);
const long = row('long', 0.3, 9);
const barred = row('barred', 0.99, 40, { labelAllows: false, labelDate: '2028-02-14', clearDate: null });
const leafy = row('leafy', null, null, { withinLimit: true });
const comparison = {
  question: { plantOn: '2027-05-10', oddsLimit: 0.1 },
  crop: 'lentil',
  activation: { odds: 0.8, low: 0.7, high: 0.9, neededMm: 13, withinDays: 14 },
  residuals: [leafy, low, long, barred],
  unjudged: [{ name: 'atrazine', code: 'INTERVAL_MISSING', reason: 'No label interval is known, =1.' }],
  cautions: [],
} as unknown as Comparison;

describe('the address of the comparison', () => {
  it('holds question, picks, order and what is drawn, and reads them back', () => {
    const asked = {
      question,
      picks: ['2,4-D', 'imazamox'],
      all: true,
      sort: { key: 'weeks', descending: true },
    } as const;
    const search = COMPARE.encode(asked, 'metric');
    expect(COMPARE.decode(search)).toEqual({ value: asked, units: 'metric', problem: null });
  });

  it('asks nothing where it holds no question, and passes over an order it does not know', () => {
    expect(COMPARE.decode('').value).toBeNull();
    expect(
      COMPARE.decode(`${COMPARE.encode({ question, picks: null, all: false, sort: null }, 'us')}&sort=size`)
        .value,
    ).toEqual({ question, picks: null, all: false, sort: null });
  });

  it('asks without what belongs to one residual only, and drops it when another residual is gone to', () => {
    expect(comparisonOf(question)).toEqual({
      station: 'demo-invented',
      appliedOn: '2026-08-14',
      crop: 'lentil',
      plantOn: '2027-05-10',
    });
    const labelEntry = { id: 'imi', name: 'Shed imi' };
    const [asked, other, own, twin] = namedRows([
      row('2,4-D', 0.1, 4),
      row('imazamox', 0.1, 4),
      row('imazamox', 0.1, 4, { labelEntry }),
      row('imazamox', 0.1, 4, { labelEntry: { ...labelEntry, id: 'imi-2' } }),
    ]);
    expect([other, own, twin].map(({ residual }) => residual)).toEqual([
      'imazamox',
      'Shed imi (imazamox), imi',
      'Shed imi (imazamox), imi-2',
    ]);
    expect(withRow(question, asked)).toBe(question);
    expect(withRow(question, other)).toEqual({ ...comparisonOf(question), residual: 'imazamox' });
    expect(withRow(question, own)).toEqual({ ...comparisonOf(question), labelEntry: 'imi' });
    const zones = [{ name: 'turn rows', overlapFactor: 2 }];
    const otherTreatments = [{ appliedOn: '2026-06-01', residual: 'atrazine' }];
    const onField = { ...question, labelEntry: 'imi', zones, otherTreatments };
    expect(withRow(onField, own)).toBe(onField);
    expect(withRow(onField, other)).toMatchObject({ zones, otherTreatments, residual: 'imazamox' });
  });
});

describe('the table', () => {
  const names = (rows: readonly ResidualRow[]) => rows.map(({ residual }) => residual);
  it('sorts both ways with what has no value last, and by use without a wish', () => {
    const { residuals } = comparison;
    expect(names(sortRows(residuals, { key: 'odds', descending: false }))).toEqual([
      'low',
      'long',
      'barred',
      'leafy',
    ]);
    expect(names(sortRows(residuals, { key: 'odds', descending: true }))).toEqual([
      'barred',
      'long',
      'low',
      'leafy',
    ]);
    expect(names(sortRows(residuals, { key: 'clear', descending: true }))[0]).toBe('barred');
    expect(names(sortRows(residuals, null))).toEqual(['low', 'leafy', 'long', 'barred']);
    expect(names(residuals)).toEqual(['leafy', 'low', 'long', 'barred']);
  });

  it('goes from rising to falling to best first, and starts anew on another column', () => {
    const rising = nextSort(null, 'odds');
    const falling = nextSort(rising, 'odds');
    expect([rising, falling, nextSort(falling, 'odds')]).toEqual([
      { key: 'odds', descending: false },
      { key: 'odds', descending: true },
      null,
    ]);
    expect(nextSort(falling, 'name')).toEqual({ key: 'name', descending: false });
  });

  it('leaves out what the label bars, unless all are wanted or nothing else is there', () => {
    expect(names(shownRows(comparison.residuals, false))).toEqual(['leafy', 'low', 'long']);
    expect(names(shownRows(comparison.residuals, true)).length).toBe(4);
    expect(names(shownRows([barred], false))).toEqual(['barred']);
  });

  it('goes to a file with units in its heads, and no cell that a spreadsheet would run', () => {
    const [heads, ...lines] = csvOf(FILE_COLUMNS, fileRows(comparison)).trimEnd().split('\r\n');
    expect(heads).toContain('"Odds, in 20","Odds, %"');
    expect(lines.length).toBe(5);
    expect(lines[1]).toMatch(
      /^low,2,yes,yes,0\.8,4\.0,2\.0,8\.0,4\.0,4\.0,3\.0,2\.0,4\.0,2026-12-14,2027-06-01,4 months/,
    );
    expect(lines[4]).toMatch(/^atrazine,,,.*"No label interval is known, =1\."$/);
  });
});

describe('seasons to draw', () => {
  const other = { ...long.interval, lengthDays: 90 };
  const short = { ...low, interval: other };
  it('are suggested of different intervals, the one brought out first', () => {
    const { residuals } = comparison;
    expect(picksOf(residuals, null, 'barred')[0]).toBe('barred');
    expect(picksOf([leafy, short, long, { ...barred, interval: other }], null, undefined)).toEqual([
      'long',
      'low',
    ]);
  });

  it('are those picked that still have a season, three at most', () => {
    expect(picksOf(comparison.residuals, ['leafy', 'long', 'gone'], undefined)).toEqual(['long']);
    expect(togglePick(['a', 'b'], 'c')).toEqual(['a', 'b', 'c']);
    expect(togglePick(['a', 'b', 'c'], 'd')).toEqual(['a', 'b', 'c']);
    expect(togglePick(['a', 'b', 'c'], 'b')).toEqual(['a', 'c']);
  });
});

describe('the comparison in words', () => {
  const us = typedDates('us');
  it('counts what fits and names the one that lasts', () => {
    expect(comparisonFinding(comparison, us)).toBe(
      '1 of 3 soil residuals fit before lentil planted May 10, 2027, by label and by your limit of 2 in 20; low holds weeds longest among them, 3.0 weeks.',
    );
    expect(comparisonFinding(comparison, typedDates('iso'))).toContain('planted 2027-05-10');
    expect(fittingWords(comparison)).toBe('It is low.');
    expect(fittingWords({ ...comparison, residuals: [long, barred] } as Comparison)).toBe('');
  });

  it('says what is least where nothing fits, and that the label bars all where it does', () => {
    const none = { ...comparison, residuals: [long, barred] } as Comparison;
    expect(comparisonFinding(none, us)).toContain('the label allows 1, but even long harms in about 6 in 20');
    const all = { ...comparison, residuals: [barred] } as Comparison;
    expect(comparisonFinding(all, us)).toContain('the label rules all of them out');
    expect(comparisonFinding({ ...comparison, residuals: [leafy] } as Comparison, us)).toContain(
      'No residual can be judged',
    );
  });

  it('says what longer control costs', () => {
    expect(tradeFinding(comparison)).toBe(
      'Longer control costs odds: long holds 9.0 weeks, at about 6 in 20.',
    );
  });

  it('says how often rain puts a residual to work, in the units shown', () => {
    expect(activationSentence(comparison, 'us')).toContain('0.51 in of water has come within 14 days');
    expect(activationSentence(comparison, 'metric')).toContain('13 mm of water');
    expect(activationSentence(comparison, 'us')).toContain('about 16 in 20 years, between 14 and 18 in 20');
  });

  it('rounds weeks as they can be known', () => {
    expect([sayWeeks(1.44), sayWeeks(9.96), sayWeeks(null)]).toEqual(['1.4', '10', 'over 150']);
    expect(sayWeekRange({ dry: 2.41, middle: 2.4, wet: 2.39 })).toBe('2.4');
    expect(sayWeekRange({ dry: null, middle: 60, wet: 50 })).toBe('50 to over 150');
  });

  it('puts those not judged for one plain reason together and keeps what tells more', () => {
    const plain = (name: string) => ({
      name,
      code: 'INTERVAL_MISSING' as const,
      reason: `No label interval is known from ${name} to lentil: read your label.`,
    });
    const more = { ...plain('c'), reason: `${plain('c').reason} Labels of Australia give 8 months.` };
    expect(groupUnjudged([plain('a'), more, plain('b')])).toEqual([
      { reason: 'No label interval is known: read your label.', names: ['a', 'b'] },
      {
        reason: 'No label interval is known: read your label. Labels of Australia give 8 months.',
        names: ['c'],
      },
    ]);
  });
});
