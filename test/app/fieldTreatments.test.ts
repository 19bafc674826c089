import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { answerSchema } from '../../src/schema/answer.ts';
import type { QuestionInput } from '../../src/schema/question.ts';
import { refusalOf } from '../refusal.ts';
import { demoDeps } from './demoDeps.ts';

const base: QuestionInput = { ...demoQuestion, interval: '4 months' };
const ask = async (change: Partial<QuestionInput>) =>
  answerSchema.parse(await answerField({ ...base, ...change }, demoDeps));
const soon = { residual: 'sulfentrazone', appliedOn: '2026-07-01', interval: '6 months' };

describe('several treatments of one field', () => {
  it('of different groups: the worst governs, year by year', async () => {
    const other = { residual: 'atrazine', appliedOn: '2026-07-10', interval: '8 months' };
    const both = await ask({ otherTreatments: [other] });
    const main = await ask({});
    const alone = await ask({ ...other, otherTreatments: [], asOf: base.asOf });
    expect(both.years).toHaveLength(main.years.length);
    for (const [index, { year, probability }] of both.years.entries()) {
      const [own, others] = [main.years[index], alone.years[index]];
      expect([own.year, others.year]).toEqual([year, year]);
      // Windows from the first treatment on: the main one’s weather reaches back to July, so only near.
      expect(Math.abs(probability - Math.max(own.probability, others.probability))).toBeLessThan(0.02);
    }
    expect(both.cautions.find(({ code }) => code === 'other-treatments')?.text).toContain('different');
  });

  it('of one group: more than the worse of both, and parts that tell which', async () => {
    const both = await ask({ otherTreatments: [soon] });
    const main = await ask({});
    expect(both.oddsAtPlanting ?? 0).toBeGreaterThan(main.oddsAtPlanting ?? 1);
    const parts = both.why?.parts ?? [];
    expect(parts.map(({ residual, appliedOn }) => [residual, appliedOn])).toEqual([
      ['flumioxazin', '2026-08-14'],
      ['sulfentrazone', '2026-07-01'],
    ]);
    const worse = Math.max(...parts.map(({ oddsWith }) => oddsWith));
    expect(both.oddsAtPlanting ?? 0).toBeGreaterThan(worse);
    expect(both.sentence).toContain('together with sulfentrazone of July 1, 2026');
    expect(both.cautions.find(({ code }) => code === 'other-treatments')?.text).toContain('added up');
  });

  it('twice half a dose on one day is one whole dose', async () => {
    const halves = await ask({
      rateFraction: 0.5,
      otherTreatments: [
        { residual: 'flumioxazin', appliedOn: '2026-08-14', interval: '4 months', rateFraction: 0.5 },
      ],
    });
    const whole = await ask({});
    expect(halves.oddsAtPlanting).toBeCloseTo(whole.oddsAtPlanting ?? 0, 9);
    expect(halves.clearDate).toBe(whole.clearDate);
    expect(halves.demandBreakdownDays).toBe(whole.demandBreakdownDays);
  });

  it('takes the latest label date, names whose it is, and never clears before it', async () => {
    const late = { residual: 'atrazine', appliedOn: '2026-09-01', interval: '12 months' };
    const both = await ask({ otherTreatments: [late] });
    expect(both.labelDate).toBe('2027-09-01');
    expect(both.clearDate === null || both.clearDate >= both.labelDate).toBe(true);
    expect(both.inputs.interval.text).toBe('12 months after atrazine of September 1, 2026');
    expect(both.inputs.mainInterval.text).toBe('4 months');
    expect(both.advice).toContain('rules out planting lentil before September 1');
    const codes = both.cautions.map(({ code }) => code);
    expect(codes).toContain('other-label');
  });

  it('leaves out intervals of 0 and actives that roots do not take up, but not their label date', async () => {
    const main = await ask({});
    const zero = await ask({ otherTreatments: [{ ...soon, appliedOn: '2026-08-20', interval: '0 days' }] });
    expect(zero.oddsAtPlanting).toBe(main.oddsAtPlanting);
    expect(zero.inputs.otherTreatments[0].leavesResidue).toBe(false);
    const untaken = await ask({
      otherTreatments: [{ residual: 'glyphosate', appliedOn: '2026-08-20', interval: '11 months' }],
    });
    expect(untaken.oddsAtPlanting).toBe(main.oddsAtPlanting);
    expect(untaken.labelDate).toBe('2027-07-20');
    expect((untaken.clearDate ?? '') >= '2027-07-20').toBe(true);
  });

  it('answers by the other treatment where the main one leaves nothing', async () => {
    const other = { residual: 'atrazine', appliedOn: '2026-08-14', interval: '8 months' };
    const both = await ask({ interval: '0 days', otherTreatments: [other] });
    const alone = await ask({ ...other });
    expect(both.carryoverModelled).toBe(true);
    expect(both.oddsAtPlanting).toBe(alone.oddsAtPlanting);
    expect(both.labelDate).toBe(alone.labelDate);
    const neither = await ask({ interval: '0 days', otherTreatments: [{ ...other, interval: '0 days' }] });
    expect(neither.carryoverModelled).toBe(false);
    expect(neither.oddsAtPlanting).toBeNull();
  });

  it('says in the sentence which intervals are not confirmed', async () => {
    const open = await ask({ otherTreatments: [{ residual: 'imazethapyr', appliedOn: '2026-07-01' }] });
    expect(open.sentence).toMatch(/not yet confirmed: that of imazethapyr is/);
    expect((await ask({ otherTreatments: [soon] })).sentence).not.toContain('confirmed');
  });

  it('judges a mix by the same treatments before each species', async () => {
    const mix = await ask({ crop: 'radish + pea', otherTreatments: [soon] });
    const pea = await ask({ crop: 'pea', otherTreatments: [soon] });
    expect(mix.mix).toHaveLength(2);
    expect(mix.oddsAtPlanting ?? 0).toBeGreaterThanOrEqual(pea.oddsAtPlanting ?? 1);
    expect(mix.labelDate >= pea.labelDate).toBe(true);
  });

  it.each([
    [
      'PLANTING_BEFORE_APPLICATION',
      { otherTreatments: [{ ...soon, appliedOn: '2027-06-01' }] },
      'otherTreatments.0.appliedOn',
    ],
    ['RESIDUAL_UNKNOWN', { otherTreatments: [{ ...soon, residual: 'moss killer' }] }, undefined],
    ['QUESTION_UNREADABLE', { otherTreatments: Array.from({ length: 11 }, () => soon) }, 'otherTreatments'],
    ['LABEL_UNKNOWN', { otherTreatments: [{ ...soon, labelEntry: 'nowhere' }] }, 'labelEntry'],
    ['CANOPY_TWICE', { canopyFraction: 0.3, growthStage: { plants: 'cereals', bbch: 31 } }, 'growthStage'],
    [
      'HALF_LIFE_MISSING',
      {
        residual: 'acetochlor',
        otherTreatments: [{ residual: 'pyroxasulfone', appliedOn: '2026-07-01', interval: '6 months' }],
      },
      'halfLifeDays',
    ],
    [
      'HALF_LIFE_MISSING',
      { residual: 'acetochlor', evidence: [{ kind: 'bioassay', on: '2026-09-20', injured: true }] },
      'halfLifeDays',
    ],
  ] as const)('refuses with %s', async (code, change, field) => {
    const refusal = await refusalOf(ask(change as Partial<QuestionInput>));
    expect(refusal).toMatchObject({ code, details: field === undefined ? {} : { field } });
  });
});

describe('spray on leaves', () => {
  it('takes the share of a growth stage from the table', async () => {
    const stage = await ask({ growthStage: { plants: 'cereals', bbch: 31 } });
    const share = await ask({ canopyFraction: 0.7 });
    expect(stage.inputs.canopyFraction).toBe(0.7);
    expect(stage.oddsAtPlanting).toBe(share.oddsAtPlanting);
  });

  it('under a nearly closed canopy almost nothing reaches the soil until rain washes it off', async () => {
    const closed = { canopyFraction: 0.95, asOf: undefined, plantOn: '2026-08-24', restOfSeasonRain: 0 };
    const partOf = (answer: Awaited<ReturnType<typeof ask>>, where: string) =>
      answer.why?.parts.find((part) => part.where === where)?.oddsWith;
    const bare = await ask({ ...closed, canopyFraction: 0 });
    const dry = await ask(closed);
    expect(bare.oddsAtPlanting ?? 0).toBeGreaterThan(0.9);
    // What reached the ground is a twentieth of the dose: harmless by itself from the start.
    expect(partOf(dry, 'ground')).toBe(0);
    // What is still on leaves counts on the day it is asked about: a caution, not a credit.
    expect(partOf(dry, 'leaves') ?? 0).toBeGreaterThan(0);
  });
});

describe('overlap zones', () => {
  const zones = [
    { name: 'single', overlapFactor: 1 },
    { name: 'turn rows', overlapFactor: 2 },
  ];

  it('are the answers of the same question with that overlap', async () => {
    const answer = await ask({ zones });
    const doubled = await ask({ overlapFactor: 2 });
    expect(answer.zones).toEqual([
      { ...zones[0], oddsAtPlanting: answer.oddsAtPlanting, clearDate: answer.clearDate },
      { ...zones[1], oddsAtPlanting: doubled.oddsAtPlanting, clearDate: doubled.clearDate },
    ]);
    expect((await ask({})).zones).toEqual([]);
  });

  it('hold beside other treatments, and take evidence for the soil of the field, not for their own dose', async () => {
    const evidence = [{ kind: 'bioassay' as const, on: '2026-09-20', injured: false }];
    const answer = await ask({ zones, evidence, otherTreatments: [soon] });
    expect(answer.zones[0].oddsAtPlanting).toBe(answer.oddsAtPlanting);
    const naive = await ask({ overlapFactor: 2, evidence, otherTreatments: [soon] });
    expect(answer.zones[1].oddsAtPlanting).not.toBe(naive.oddsAtPlanting);
    const without = await ask({ zones, otherTreatments: [soon] });
    expect(answer.zones[1].oddsAtPlanting ?? 1).toBeLessThan(without.zones[1].oddsAtPlanting ?? 0);
  });

  it('have no odds where no half-life is known, and none but the label date without carryover', async () => {
    const unknown = await ask({ residual: 'acetochlor', interval: '4 months', zones });
    expect(unknown.oddsAtPlanting).not.toBeNull();
    expect(unknown.zones[1]).toEqual({ ...zones[1], oddsAtPlanting: null, clearDate: null });
    const none = await ask({ interval: '0 days', zones });
    expect(none.zones[0]).toEqual({ ...zones[0], oddsAtPlanting: null, clearDate: none.labelDate });
    expect(await refusalOf(ask({ zones: [{ name: 'x', overlapFactor: 0.5 }] }))).toMatchObject({
      code: 'QUESTION_UNREADABLE',
    });
  });
});
