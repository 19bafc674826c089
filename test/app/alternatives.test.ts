import { describe, expect, it } from 'vitest';
import { alternatives } from '../../src/app/alternatives.ts';
import { answerField } from '../../src/app/answerField.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { alternativesSchema } from '../../src/schema/alternatives.ts';
import type { QuestionInput } from '../../src/schema/question.ts';
import { refusalOf } from '../refusal.ts';
import { demoDeps } from './demoDeps.ts';

const look = async (change: Partial<QuestionInput> = {}) =>
  alternativesSchema.parse(await alternatives({ ...demoQuestion, ...change }, demoDeps));
const answer = (change: Partial<QuestionInput> = {}) => answerField({ ...demoQuestion, ...change }, demoDeps);

describe('alternatives', () => {
  it.each([
    ['plain', {}],
    ['own interval', { interval: '9 months' }],
    [
      'evidence and another treatment',
      {
        evidence: [{ kind: 'soil test', on: '2026-09-25', fractionLeft: 0.5 }],
        otherTreatments: [{ residual: 'atrazine', appliedOn: '2026-07-01', interval: '10 months' }],
      },
    ],
  ] as const)('begins with the answer to the question itself, %s', async (_, change) => {
    const given = change as Partial<QuestionInput>;
    const { asAsked, overlap } = await look(given);
    const { oddsAtPlanting, labelDate, clearDate } = await answer(given);
    expect(asAsked).toMatchObject({ oddsAtPlanting, labelDate, clearDate });
    expect(overlap[0]).toEqual({ overlapFactor: 1, oddsAtPlanting, clearDate });
    const days = (Date.parse(clearDate ?? '') - Date.parse('2027-05-10')) / 86_400_000;
    expect(asAsked.waitDays).toBe(Math.max(0, days));
  });

  it('tells what overlap and pH change, as the question with them says', async () => {
    const { overlap, soilPh } = await look({ residual: 'chlorsulfuron', interval: '9 months' });
    const own = { residual: 'chlorsulfuron', interval: '9 months' };
    const doubled = await answer({ ...own, overlapFactor: 2 });
    expect(overlap[2]).toEqual({
      overlapFactor: 2,
      oddsAtPlanting: doubled.oddsAtPlanting,
      clearDate: doubled.clearDate,
    });
    const eight = await answer({ ...own, soilPh: 8 });
    expect(soilPh.find((zone) => zone.soilPh === 8)).toMatchObject({
      oddsAtPlanting: eight.oddsAtPlanting,
      clearDate: eight.clearDate,
    });
    const odds = soilPh.map(({ oddsAtPlanting }) => oddsAtPlanting ?? Number.NaN);
    expect(odds).toEqual(odds.toSorted((a, b) => a - b));
  });

  it('offers other crops by whether they would do, and residuals that would have', async () => {
    const found = await look();
    expect(found.crop).toBe('lentil');
    expect(found.otherCrops.map(({ crop }) => crop)).not.toContain('lentil');
    const within = found.otherCrops.map(({ withinLimit }) => withinLimit);
    expect(within).toEqual(within.toSorted((a, b) => Number(b) - Number(a)));
    for (const { residual, withinLimit, labelDate } of found.otherResiduals) {
      expect(withinLimit).toBe(true);
      expect(labelDate <= '2027-05-10').toBe(true);
      expect(residual).not.toBe('flumioxazin');
    }
    const [crop] = found.otherCrops;
    const single = await answer({ crop: crop.crop });
    expect(crop.oddsAtPlanting).toBe(single.oddsAtPlanting);
  });

  it('notes what it cannot look at', async () => {
    const unlisted = await look({ residual: 'residual of my own', halfLifeDays: 30, interval: '4 months' });
    expect(unlisted.otherCrops).toEqual([]);
    expect(unlisted.notes.join(' ')).toContain('not in the catalogue');
    const acetochlor = await look({ residual: 'acetochlor', interval: '4 months' });
    expect(acetochlor.overlap).toEqual([]);
    expect(acetochlor.notes.join(' ')).toContain('No half-life');
    const none = await look({ interval: '0 days' });
    expect(none).toMatchObject({ overlap: [], soilPh: [], asAsked: { oddsAtPlanting: null, waitDays: 0 } });
    const others = await look({
      otherTreatments: [
        { residual: 'own brew', appliedOn: '2026-07-01', interval: '1 month', halfLifeDays: 9 },
      ],
    });
    expect(others.otherCrops).toEqual([]);
    expect(others.notes.join(' ')).toMatch(/own brew, also sprayed.*belongs to the crop asked about/);
  });

  it('counts the field’s other treatments for other crops and residuals too', async () => {
    const otherTreatments = [{ residual: 'imazethapyr', appliedOn: '2026-07-01' }];
    const found = await look({ otherTreatments });
    const alone = await look();
    const [crop] = found.otherCrops.filter(({ oddsAtPlanting }) => oddsAtPlanting !== null);
    const single = await answer({ crop: crop.crop, otherTreatments });
    expect(crop).toMatchObject({ oddsAtPlanting: single.oddsAtPlanting, labelDate: single.labelDate });
    expect(found.otherResiduals.length).toBeLessThan(alone.otherResiduals.length);
  });

  it('judges a mix by the worst of its species', async () => {
    const mixed = { crop: 'lentil + canola' };
    const found = await look(mixed);
    const { oddsAtPlanting, labelDate, clearDate } = await answer(mixed);
    expect(found).toMatchObject({
      crop: 'lentil + canola',
      asAsked: { oddsAtPlanting, labelDate, clearDate },
    });
    const doubled = await answer({ ...mixed, overlapFactor: 2 });
    expect(found.overlap[2]).toEqual({
      overlapFactor: 2,
      oddsAtPlanting: doubled.oddsAtPlanting,
      clearDate: doubled.clearDate,
    });
    expect(found.otherCrops.map(({ crop }) => crop)).not.toContain('canola');
    expect(found.otherCrops.length).toBeGreaterThan(5);
    const single = await Promise.all(['lentil', 'canola'].map((crop) => look({ crop })));
    const inBoth = single[0].otherResiduals.filter(({ residual }) =>
      single[1].otherResiduals.some((other) => other.residual === residual),
    );
    expect(found.otherResiduals.map(({ residual }) => residual).sort()).toEqual(
      inBoth.map(({ residual }) => residual).sort(),
    );
    for (const { oddsAtPlanting: odds, residual } of found.otherResiduals) {
      const own = single.map(
        ({ otherResiduals }) =>
          otherResiduals.find((other) => other.residual === residual)?.oddsAtPlanting ?? 0,
      );
      expect(odds ?? 0, residual).toBe(Math.max(...own));
    }
  });

  it('refuses what an answer refuses', async () => {
    expect(await refusalOf(look({ crop: 'radish +' }))).toMatchObject({ code: 'CROP_MIX' });
    expect(await refusalOf(look({ station: 'nowhere' }))).toMatchObject({ code: 'STATION_UNKNOWN' });
  });
});
