import { describe, expect, it } from 'vitest';
import type { CropGrid, CropRow, QuestionInput } from '../../web/src/api/contract.ts';
import { csvOf } from '../../web/src/charts/csv.ts';
import { CROPS, cropGridOf, spanAround, withCrop } from '../../web/src/crops/cropsAddress.ts';
import { fileColumns } from '../../web/src/crops/cropsFiles.ts';
import { byLabelDate, cellInWords, cropsFinding } from '../../web/src/crops/cropsWords.ts';
import {
  cellOf,
  columnAround,
  columnOfDate,
  columnsOf,
  monthSpans,
  moveOn,
  splitRows,
} from '../../web/src/crops/gridView.ts';
import { readCrops } from '../../web/src/crops/readCrops.ts';
import { typedDates } from '../../web/src/units/dates.ts';

const question: QuestionInput = {
  station: 'demo-invented',
  residual: 'flumioxazin',
  appliedOn: '2026-08-14',
  crop: 'lentil',
  plantOn: '2027-05-10',
  interval: '9 months',
};

function row(crop: string, odds: number[] | null, part: Partial<CropRow> = {}): CropRow {
  return {
    crop,
    carryoverModelled: odds !== null,
    labelDate: '2027-05-05',
    clearDate: '2027-05-17',
    interval: { text: '9 months', origin: 'catalogue', fromMemory: false, lengthDays: 264 },
    odds,
    oddsRange: odds && {
      low: odds.map((value) => value * 0.8),
      high: odds.map((value) => Math.min(1, value * 1.2)),
      years: odds.map(() => 57),
    },
    dry: odds?.map((value) => Math.min(1, value * 1.5)) ?? null,
    wet: odds?.map((value) => value / 2) ?? null,
    ...part,
  } as CropRow;
}

const grid = {
  question: { appliedOn: '2026-08-14', oddsLimit: 0.1 },
  residual: 'flumioxazin',
  dates: ['2027-04-26', '2027-05-03', '2027-05-10', '2027-05-17'],
  crops: [
    row('wheat', [0.1, 0.08, 0.05, 0.01]),
    row('lentil', [0.5, 0.4, 0.25, 0.09]),
    row('soybean', null, { labelDate: '2026-08-14', clearDate: '2026-08-14' }),
    row('canola', [1, 1, 1, 1], { labelDate: '2027-08-14', clearDate: null }),
  ],
  unjudged: [],
  cautions: [],
} as unknown as CropGrid;
const { columns } = columnsOf(grid.dates);
const us = typedDates('us');

describe('the address of the grid', () => {
  it('holds question, dates, years and crops, and reads them back', () => {
    const asked = {
      question,
      span: { plantFrom: '2027-04-01', plantTo: '2027-06-01', stepDays: 3 },
      years: 'dry',
      crops: ['lentil', 'field pea'],
    } as const;
    expect(CROPS.decode(CROPS.encode(asked, 'metric'))).toEqual({
      value: asked,
      units: 'metric',
      problem: null,
    });
  });

  it('takes fourteen weeks around the planting date where a field’s address is carried over', () => {
    const carried = CROPS.encode(
      { question, span: spanAround(question), years: 'all', crops: null },
      'us',
    ).replace(/&plantFrom.*$/, '');
    expect(CROPS.decode(carried).value?.span).toEqual({
      plantFrom: '2027-04-05',
      plantTo: '2027-07-05',
      stepDays: 7,
    });
    expect(spanAround({ ...question, plantOn: '2026-08-25' }).plantFrom).toBe('2026-08-18');
  });

  it('asks without what belongs to one crop only, and drops it when another crop is gone to', () => {
    const asked = cropGridOf({ question, span: spanAround(question), years: 'dry', crops: null });
    expect(asked).toEqual({
      station: 'demo-invented',
      residual: 'flumioxazin',
      appliedOn: '2026-08-14',
      plantFrom: '2027-04-05',
      plantTo: '2027-07-05',
      stepDays: 7,
    });
    expect(withCrop(question, 'lentil', '2027-05-17').interval).toBe('9 months');
    expect('interval' in withCrop(question, 'wheat', '2027-05-17')).toBe(false);
  });
});

describe('the grid', () => {
  it('never shows odds before the label date, and none where none are reckoned', () => {
    const [wheat, , soybean, canola] = grid.crops;
    expect(columns.map((column) => cellOf(wheat, column, 'all').kind)).toEqual([
      'barred',
      'barred',
      'odds',
      'odds',
    ]);
    expect(cellOf(wheat, columns[2], 'dry')).toEqual({ kind: 'odds', odds: expect.closeTo(0.075, 12) });
    expect(cellOf(soybean, columns[0], 'all')).toEqual({ kind: 'free' });
    expect(columns.every((column) => cellOf(canola, column, 'wet').kind === 'barred')).toBe(true);
  });

  it('marks a date at the first column on or after it, and not at all outside', () => {
    expect(columnOfDate(columns, '2027-05-05')).toBe(2);
    expect(columnOfDate(columns, '2027-04-26')).toBe(0);
    expect(columnOfDate(columns, '2027-04-01')).toBeNull();
    expect(columnOfDate(columns, '2027-06-01')).toBeNull();
    expect(columnOfDate(columns, null)).toBeNull();
    expect([columnAround(columns, '2027-05-12'), columnAround(columns, '2027-05-17')]).toEqual([2, 3]);
    expect([columnAround(columns, '2027-04-25'), columnAround(columns, '2027-05-18')]).toEqual([null, null]);
  });

  it('thins out more dates than can be read, and groups them by month', () => {
    const many = Array.from(
      { length: 130 },
      (_, day) =>
        `2027-${String(1 + Math.floor(day / 28)).padStart(2, '0')}-${String(1 + (day % 28)).padStart(2, '0')}`,
    );
    const thin = columnsOf(many);
    expect(thin.every).toBe(3);
    expect(thin.columns.length).toBe(44);
    expect(thin.columns[1]).toEqual({ date: many[3], index: 3 });
    expect(monthSpans(columns)).toEqual([
      { month: '2027-04', columns: 1 },
      { month: '2027-05', columns: 3 },
    ]);
  });

  it('bars a crop on every date while a condition of its label is not met, and says so', () => {
    const flax = row('flax', [0, 0, 0, 0], { labelForbids: true });
    const withFlax = { ...grid, crops: [...grid.crops, flax] };
    expect(columns.map((column) => cellOf(flax, column, 'all').kind)).toEqual(columns.map(() => 'barred'));
    expect(splitRows(withFlax, 'lentil').barred.map(({ crop }) => crop)).toEqual(['canola', 'flax']);
    expect(byLabelDate([flax])).toEqual([{ labelDate: '', crops: ['flax'] }]);
    expect(cellInWords(flax, columns[3], 'all', us)).toContain(
      'not allowed by the label while one of its conditions is not met',
    );
  });

  it('sets apart the crops that the label bars throughout, but never the one asked about', () => {
    expect(splitRows(grid, 'lentil').barred.map(({ crop }) => crop)).toEqual(['canola']);
    expect(splitRows(grid, 'canola').barred).toEqual([]);
    expect(byLabelDate(grid.crops).map(({ crops }) => crops)).toEqual([
      ['soybean'],
      ['wheat', 'lentil'],
      ['canola'],
    ]);
  });

  it('moves by keys and stays inside', () => {
    const size = { rows: 3, columns: 4 };
    const keys = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End', 'PageUp', 'PageDown'];
    expect(keys.map((key) => moveOn(key, { row: 0, column: 3 }, size))).toEqual([
      { row: 0, column: 2 },
      { row: 0, column: 3 },
      { row: 0, column: 3 },
      { row: 1, column: 3 },
      { row: 0, column: 0 },
      { row: 0, column: 3 },
      { row: 0, column: 3 },
      { row: 2, column: 3 },
    ]);
    expect(moveOn('a', { row: 0, column: 0 }, size)).toBeNull();
  });

  it('goes to a file with every date in all three sets of years, barred ones named so', () => {
    const [heads, wheat] = csvOf(fileColumns(grid.dates), grid.crops).split('\r\n');
    expect(heads.match(/third, %/g)?.length).toBe(8);
    expect(heads.match(/all years, %/g)?.length).toBe(4);
    expect(wheat.match(/not allowed/g)?.length).toBe(6);
    expect(wheat).toContain('5.0,1.0');
  });
});

describe('the grid in words', () => {
  it('counts what fits on the date and says how it stands with the crop asked about', () => {
    expect(cropsFinding(grid, columns[2], 'lentil', 'all', us)).toEqual({
      head: 'After flumioxazin sprayed August 14, 2026, 2 of 4 crops fit on May 10, 2027, by label and by your limit of 2 in 20.',
      rest: 'They are wheat and soybean. Lentil is not among them, about 5 in 20.',
    });
    expect(cropsFinding(grid, columns[0], 'lentil', 'all', us).rest).toContain(
      'The label bars lentil until May 5, 2027.',
    );
  });

  it('reads out a cell', () => {
    const [, lentil, soybean, canola] = grid.crops;
    expect(cellInWords(lentil, columns[2], 'all', us)).toBe(
      'lentil on May 10, 2027: about 5 in 20 over all years, fairly often (57 years put it between 4 and 6 in 20; about 8 in 20 in dry years, about 3 in 20 in wet ones); label date May 5, clear from May 17.',
    );
    expect(cellInWords(soybean, columns[2], 'all', us)).toContain('no carryover is reckoned');
    expect(cellInWords(canola, columns[2], 'dry', typedDates('iso'))).toBe(
      'canola on 2027-05-10: not allowed by the label until 2027-08-14; no clear date within the search.',
    );
  });
});

describe('a list of crops', () => {
  const known = [
    { name: 'field pea', aliases: ['peas'] },
    { name: 'lentil', aliases: [] },
  ];
  it('is read by any of their names, once each; empty it stands for all', () => {
    expect(readCrops('Lentil, peas,field pea', known)).toEqual({ value: ['lentil', 'field pea'] });
    expect(readCrops(' , ', known)).toEqual({ value: null });
  });
  it('names what the catalogue lacks', () => {
    expect(readCrops('lentil, moonwort', known)).toEqual({ problem: expect.stringContaining('“moonwort”') });
  });
});
