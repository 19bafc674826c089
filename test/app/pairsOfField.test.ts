import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { compareResiduals } from '../../src/app/compareResiduals.ts';
import { cropByDate } from '../../src/app/cropByDate.ts';
import { readLabelEntry } from '../../src/app/labelBook.ts';
import type { Answer } from '../../src/schema/answer.ts';
import { comparisonSchema, cropGridSchema } from '../../src/schema/comparison.ts';
import { refusalOf } from '../refusal.ts';
import { demoDeps, demoSeason } from './demoDeps.ts';

const entries = [
  ['imi', 'Shed imi (invented)', ['imazethapyr'], { lentil: '7 months', canola: '2 years' }],
  [
    'both',
    'Shed both (invented)',
    ['imazethapyr', 'flumioxazin'],
    { lentil: '5 months', quinoa: '11 months' },
  ],
].map(([id, name, actives, intervals]) => ({
  version: 1,
  entry: readLabelEntry({
    ...{ id, name, labelVersion: 'invented', enteredOn: '2026-08-01' },
    actives: (actives as string[]).map((active) => ({ name: active })),
    intervals: Object.entries(intervals).map(([crop, interval]) => ({ crop, interval })),
  }),
}));
const deps = {
  ...demoDeps,
  labels: {
    labels: async () => entries,
    label: async (id: string) => entries.find(({ entry }) => entry.id === id) ?? null,
  },
};
/** Sprayed before the main treatment: one of its group, one of another. */
const otherTreatments = [
  { appliedOn: '2026-06-20', residual: 'imazamox', rateFraction: 0.5 },
  { appliedOn: '2026-07-01', labelEntry: 'imi', rateFraction: 0.3 },
];
const field = { ...demoSeason, asOf: '2026-09-30', otherTreatments };

const figuresOf = (answer: Answer) => ({
  odds: answer.oddsAtPlanting,
  dry: answer.thirds.find(({ name }) => name === 'dry')?.odds ?? null,
  label: answer.labelDate,
  clear: answer.clearDate,
});

describe('residuals side by side on a kept field', () => {
  it('stand with its other treatments and by its own labels, with the figures of single answers', async () => {
    const asked = { ...field, crop: 'lentil', plantOn: '2027-05-10' };
    const { residuals, unjudged, cautions } = comparisonSchema.parse(await compareResiduals(asked, deps));
    const own = residuals.filter(({ labelEntry }) => labelEntry !== null);
    expect(own.map(({ residual, labelEntry }) => [residual, labelEntry?.id]).sort()).toEqual([
      ['imazethapyr + flumioxazin', 'both'],
      ['imazethapyr', 'imi'],
    ]);
    // The product of one active stands for the catalogue's row; that of two stands beside both.
    expect(residuals.filter(({ residual }) => residual === 'imazethapyr')).toHaveLength(1);
    expect(residuals.map(({ residual }) => residual)).toContain('flumioxazin');
    expect(cautions.join(' ')).toContain('The field’s 2 other treatments count in every row');
    const some = [...own, ...residuals.filter((row, index) => row.labelEntry === null && index % 4 === 0)];
    for (const row of some) {
      const given = row.labelEntry === null ? { residual: row.residual } : { labelEntry: row.labelEntry.id };
      const answer = await answerField({ ...asked, ...given }, deps);
      expect(
        {
          odds: row.oddsAtPlanting,
          dry: row.thirdOdds?.dry ?? null,
          label: row.labelDate,
          clear: row.clearDate,
        },
        row.residual,
      ).toEqual(figuresOf(answer));
      expect(row.oddsRange).toEqual(answer.oddsRange);
      expect(row.oddsAtLabelDate).toBe(answer.oddsAtLabelDate);
    }
    const [missing] = unjudged;
    expect(await refusalOf(answerField({ ...asked, residual: missing.name }, deps))).toMatchObject({
      code: missing.code,
    });
  });

  it('take a crop that only the user’s own label knows', async () => {
    const { residuals, crop } = await compareResiduals(
      { ...demoSeason, crop: 'Quinoa', plantOn: '2027-05-10' },
      deps,
    );
    expect(crop).toBe('quinoa');
    expect(residuals.map(({ labelEntry }) => labelEntry?.id)).toEqual(['both']);
  });
});

describe('crops by date on a kept field', () => {
  it.each([
    ['an own label entry', { labelEntry: 'both' }],
    ['an active of the catalogue', { residual: 'flumioxazin' }],
  ])('stand with its other treatments, after %s', async (_, treatment) => {
    const asked = { ...field, ...treatment, plantFrom: '2027-04-01', plantTo: '2027-07-15', stepDays: 21 };
    const { otherTreatments: [first] = [] } = field;
    const season = { ...asked, otherTreatments: [{ ...first, interval: '10 months' }] };
    const { crops, dates, unjudged } = cropGridSchema.parse(await cropByDate(season, deps));
    const { plantFrom: _from, plantTo: _to, stepDays: _step, ...rest } = asked;
    for (const [index, row] of crops.entries()) {
      const at = index % dates.length;
      const single = { ...rest, crop: row.crop, plantOn: dates[at], otherTreatments: [first] };
      const answer = figuresOf(await answerField(single, deps));
      expect(
        { odds: row.odds?.[at] ?? null, dry: row.dry?.[at] ?? null, label: row.labelDate },
        row.crop,
      ).toEqual({ odds: answer.odds, dry: answer.dry, label: answer.label });
    }
    const judged = crops.map(({ crop }) => crop);
    if ('labelEntry' in treatment) {
      expect(judged).toEqual(['lentil']);
      expect(unjudged.find(({ name }) => name === 'canola')?.reason).toBe(
        'Your entry of Shed both (invented) has no interval for canola.',
      );
      expect(unjudged.map(({ name }) => name)).toContain('quinoa');
    } else expect(judged.length).toBeGreaterThan(5);
  });

  it('refuses a question that names neither an active nor a label entry', async () => {
    const asked = { ...field, plantFrom: '2027-04-01', plantTo: '2027-07-15' };
    expect(await refusalOf(cropByDate(asked, deps))).toMatchObject({ code: 'QUESTION_UNREADABLE' });
  });
});
