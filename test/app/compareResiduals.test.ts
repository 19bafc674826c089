import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { compareResiduals } from '../../src/app/compareResiduals.ts';
import { type ComparisonInput, comparisonSchema } from '../../src/schema/comparison.ts';
import { refusalOf } from '../refusal.ts';
import { demoDeps, demoSeason } from './demoDeps.ts';

const lentil: ComparisonInput = { ...demoSeason, crop: 'lentil', plantOn: '2027-05-10' };
const cases: readonly (readonly [string, ComparisonInput])[] = [
  ['planned', lentil],
  ['under way', { ...lentil, asOf: '2026-09-30', crop: 'canola' }],
  [
    'with an outlook and a dry rest',
    {
      ...lentil,
      crop: 'sugarbeet',
      asOf: '2026-09-30',
      restOfSeasonRain: 0.7,
      outlook: { belowPercent: 50, nearPercent: 30, abovePercent: 20 },
    },
  ],
  [
    'on leaves, at pH 8, from few years',
    { ...lentil, canopyFraction: 0.5, soilPh: 8, baseFrom: 1990, baseTo: 2012 },
  ],
];

describe('compareResiduals', () => {
  it.each(cases)('gives each residual the figures of its single answer, %s', async (_, question) => {
    const { residuals, unjudged } = comparisonSchema.parse(await compareResiduals(question, demoDeps));
    expect(residuals.length).toBeGreaterThan(15);
    expect(residuals.length + unjudged.length).toBe(demoDeps.catalogue.actives.length);
    // A quarter of the residuals each: the four cases together meet them all.
    const part = cases.findIndex(([, one]) => one === question);
    for (const row of residuals.filter((_row, index) => index % cases.length === part)) {
      const answer = await answerField({ ...question, residual: row.residual }, demoDeps);
      const third = (name: string) => answer.thirds.find((one) => one.name === name)?.odds;
      expect(
        {
          odds: row.oddsAtPlanting,
          range: row.oddsRange,
          atLabel: row.oddsAtLabelDate,
          label: row.labelDate,
          clear: row.clearDate,
          thirds: row.thirdOdds ? [row.thirdOdds.dry, row.thirdOdds.middle, row.thirdOdds.wet] : [],
          modelled: row.carryoverModelled,
        },
        row.residual,
      ).toEqual({
        odds: answer.oddsAtPlanting,
        range: answer.oddsRange,
        atLabel: answer.oddsAtLabelDate,
        label: answer.labelDate,
        clear: answer.clearDate,
        thirds: answer.thirds.length > 0 ? ['dry', 'middle', 'wet'].map(third) : [],
        modelled: answer.carryoverModelled,
      });
    }
    for (const { name, code } of unjudged.slice(0, 3)) {
      expect(await refusalOf(answerField({ ...question, residual: name }, demoDeps)), name).toMatchObject({
        code,
      });
    }
  });

  it('puts those that would do first, and only where label and limit both allow', async () => {
    const { residuals, question } = await compareResiduals(lentil, demoDeps);
    const rank = residuals.map(({ withinLimit, labelAllows }) => (withinLimit ? 0 : labelAllows ? 1 : 2));
    expect(rank).toEqual(rank.toSorted((a, b) => a - b));
    for (const { withinLimit, labelDate, oddsAtPlanting } of residuals) {
      expect(withinLimit).toBe(labelDate <= question.plantOn && (oddsAtPlanting ?? 0) <= question.oddsLimit);
    }
  });

  it('reckons weeks of control from the half-life, longer where it is dry, and never without one', async () => {
    const { residuals, activation } = await compareResiduals(lentil, demoDeps);
    let told = 0;
    for (const { weeksOfControl: weeks, halfLife } of residuals) {
      if (weeks === null) continue;
      told++;
      expect(halfLife).not.toBeNull();
      expect(weeks.dry ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(weeks.wet ?? 0);
    }
    expect(told).toBeGreaterThan(10);
    expect(activation).toMatchObject({ neededMm: 13, withinDays: 14 });
    expect(activation?.low).toBeLessThan(activation?.odds ?? 0);
    const changed = await compareResiduals({ ...lentil, assume: { activationRainMm: 0 } }, demoDeps);
    expect(changed.activation?.odds).toBe(1);
  });

  it('refuses an unknown crop and a date before spraying', async () => {
    expect(await refusalOf(compareResiduals({ ...lentil, crop: 'moss' }, demoDeps))).toMatchObject({
      code: 'CROP_UNKNOWN',
    });
    expect(await refusalOf(compareResiduals({ ...lentil, plantOn: '2026-08-01' }, demoDeps))).toMatchObject({
      code: 'PLANTING_BEFORE_APPLICATION',
    });
  });
});
