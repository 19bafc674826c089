import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { cropByDate } from '../../src/app/cropByDate.ts';
import { type CropGridInput, cropGridSchema } from '../../src/schema/comparison.ts';
import { refusalOf } from '../refusal.ts';
import { demoDeps, demoSeason } from './demoDeps.ts';

const base: CropGridInput = {
  ...demoSeason,
  residual: 'imazethapyr',
  plantFrom: '2027-04-01',
  plantTo: '2027-09-20',
  stepDays: 43,
};

describe('cropByDate', () => {
  it.each([
    ['planned', base],
    ['under way', { ...base, asOf: '2026-09-30', residual: 'atrazine' }],
    [
      'with an outlook',
      { ...base, asOf: '2026-09-30', outlook: { belowPercent: 40, nearPercent: 35, abovePercent: 25 } },
    ],
  ] as const)('gives each crop and date the figures of its single answer, %s', async (_, question) => {
    const { crops, dates, unjudged } = cropGridSchema.parse(await cropByDate(question, demoDeps));
    expect(dates).toEqual(['2027-04-01', '2027-05-14', '2027-06-26', '2027-08-08', '2027-09-20']);
    expect(crops.length).toBeGreaterThan(8);
    expect(crops.length + unjudged.length).toBe(demoDeps.catalogue.crops.length);
    const { plantFrom: _from, plantTo: _to, stepDays: _step, ...field } = question;
    for (const [index, row] of crops.entries()) {
      if (index % 2 === 1) continue;
      const dateIndex = (index / 2) % dates.length;
      const answer = await answerField({ ...field, crop: row.crop, plantOn: dates[dateIndex] }, demoDeps);
      const third = (name: string) => answer.thirds.find((one) => one.name === name)?.odds ?? null;
      expect(
        {
          odds: row.odds?.[dateIndex] ?? null,
          range: row.oddsRange && {
            low: row.oddsRange.low[dateIndex],
            high: row.oddsRange.high[dateIndex],
            years: row.oddsRange.years[dateIndex],
          },
          dry: row.dry?.[dateIndex] ?? null,
          wet: row.wet?.[dateIndex] ?? null,
          labelDate: row.labelDate,
        },
        row.crop,
      ).toEqual({
        odds: answer.oddsAtPlanting,
        range: answer.oddsRange,
        dry: third('dry'),
        wet: third('wet'),
        labelDate: answer.labelDate,
      });
      if (dateIndex !== 1) continue;
      const first = await answerField({ ...field, crop: row.crop, plantOn: dates[0] }, demoDeps);
      expect(row.clearDate, row.crop).toBe(first.clearDate);
    }
  });

  it('sorts by clear date, and takes the crops that are named', async () => {
    const { crops } = await cropByDate(
      { ...base, crops: ['peas', 'wheat', 'field pea', 'lentil'] },
      demoDeps,
    );
    expect(new Set(crops.map(({ crop }) => crop)).size).toBe(crops.length);
    expect(crops.map(({ crop }) => crop)).toContain('field pea');
    const clear = crops.map(({ clearDate }) => clearDate ?? '9999');
    expect(clear).toEqual(clear.toSorted());
  });

  it.each([
    ['RESIDUAL_UNKNOWN', { residual: 'moss killer' }],
    ['CROP_UNKNOWN', { crops: ['moss'] }],
    ['DATES_DISORDERED', { plantTo: '2027-03-31' }],
    ['TOO_MANY_DATES', { stepDays: 1, plantTo: '2028-06-01' }],
    ['PLANTING_BEFORE_APPLICATION', { plantFrom: '2026-08-01' }],
    ['QUESTION_UNREADABLE', { stepDays: 0 }],
  ])('refuses with %s', async (code, change) => {
    expect(await refusalOf(cropByDate({ ...base, ...change }, demoDeps))).toMatchObject({ code });
  });
});
