import { describe, expect, it } from 'vitest';
import { alternatives } from '../../src/app/alternatives.ts';
import { answerField } from '../../src/app/answerField.ts';
import { readLabelEntry } from '../../src/app/labelBook.ts';
import type { Answer } from '../../src/schema/answer.ts';
import { refusalOf } from '../refusal.ts';
import { countedDeps, countedQuestion, wetRain } from './countedStation.ts';

const entryOf = (id: string, actives: object[], intervals: object[]) =>
  readLabelEntry({
    id,
    name: `Shed ${id} (invented)`,
    actives,
    intervals,
    labelVersion: 'invented 2021',
    enteredOn: '2021-05-01',
  });

const LENTIL = { crop: 'lentil', interval: '6 months' };
const entries = [
  entryOf(
    'one',
    [{ name: 'flumioxazin', rateGramsPerHa: 107 }],
    [
      { ...LENTIL, conditions: 'Not on sand (invented words).' },
      { crop: 'flax', interval: '2 months', foodFeedInterval: '5 months' },
      {
        crop: 'oats',
        interval: '4 months',
        clauses: [
          {
            kind: 'water',
            minMm: 300,
            counts: 'rain',
            window: { from: 'application', to: 'interval end' },
            ifNot: { months: 12 },
          },
          { kind: 'rate', toGramsPerHa: 107, ifNot: { months: 10 } },
        ],
      },
      {
        crop: 'barley',
        interval: '4 months',
        clauses: [{ kind: 'soilTexture', groups: ['medium', 'fine'], ifNot: { months: 10 } }],
      },
      {
        crop: 'corn',
        interval: '0',
        clauses: [{ kind: 'startingRain', minMm: 25, onDrySoilOnly: false, ifNot: 'not allowed' }],
      },
    ],
  ),
  entryOf('imi', [{ name: 'imazethapyr' }], [LENTIL]),
  entryOf('two-imi', [{ name: 'imazethapyr' }, { name: 'imazamox' }], [LENTIL]),
  entryOf('clom', [{ name: 'clomazone' }], [LENTIL]),
  entryOf('imi-clom', [{ name: 'imazethapyr' }, { name: 'clomazone' }], [LENTIL]),
  entryOf('burn', [{ name: 'paraquat' }, { name: 'flumioxazin' }], [LENTIL]),
  entryOf('own', [{ name: 'madeupazin', halfLifeDays: 50 }], [{ crop: 'quinoa', interval: '8 months' }]),
];
const deps = countedDeps(wetRain, entries);
const { residual: _, ...untold } = countedQuestion;
const ask = (labelEntry: string, over: object = {}) => answerField({ ...untold, labelEntry, ...over }, deps);
const cautionOf = (answer: Answer, code: string) =>
  answer.cautions.filter((one) => one.code === code).map(({ text }) => text);
const oddsByYear = ({ years }: Answer) => years.map(({ probability }) => probability);

describe('an own label entry', () => {
  it('wins over the catalogue, and the answer loses the mark of memory', async () => {
    const plain = await answerField(countedQuestion, deps);
    expect(plain.labelDate).toBe('2021-10-01');
    expect(plain.sentence).toContain('a figure from memory, not yet confirmed');
    const answer = await ask('one');
    expect(answer.labelDate).toBe('2021-12-01');
    expect(answer.inputs.interval).toMatchObject({
      text: '6 months',
      origin: 'own label',
      confirmed: true,
      fromMemory: false,
    });
    expect(answer.sentence).not.toMatch(/confirmed|memory/);
    expect(cautionOf(answer, 'interval-unconfirmed')).toEqual([]);
  });

  it('is printed in the record: its name, version, the day it was read, its own words', async () => {
    const answer = await ask('one');
    expect(answer.inputs.labelEntry).toEqual({ version: 3, entry: entries[0] });
    expect(cautionOf(answer, 'label-entry')[0]).toMatch(
      /Shed one .*label invented 2021, read on May 1, 2021 .*version 3/,
    );
    expect(cautionOf(answer, 'label-words')[0]).toContain('Not on sand (invented words).');
  });

  it('may be asked by its product or an active, and by no other', async () => {
    expect((await ask('one', { residual: 'Flumioxazin' })).labelDate).toBe('2021-12-01');
    const error = await refusalOf(ask('one', { residual: 'imazamox' }));
    expect(error).toMatchObject({
      code: 'LABEL_ACTIVE',
      details: { field: 'residual', known: ['flumioxazin'] },
    });
  });

  it('has to have the crop, and be there', async () => {
    const crop = await refusalOf(ask('imi', { crop: 'canola' }));
    expect(crop.code).toBe('INTERVAL_MISSING');
    expect(crop.message).toContain('has no interval for canola');
    expect(crop.hint).toContain('it has lentil');
    const unknown = await refusalOf(ask('three'));
    expect(unknown).toMatchObject({ code: 'LABEL_UNKNOWN', details: { id: 'three' } });
    expect(unknown.hint).toContain('two-imi');
  });

  it('leaves no room for another interval in the question', async () => {
    expect((await ask('one', { interval: '6 mo' })).labelDate).toBe('2021-12-01');
    expect((await refusalOf(ask('one', { interval: '3 months' }))).code).toBe('LABEL_INTERVAL');
  });

  it('may hold what the catalogue does not know', async () => {
    const answer = await ask('own', { crop: 'quinoa' });
    expect(answer.labelDate).toBe('2022-02-01');
    expect(answer.inputs.residual).toMatchObject({
      name: 'madeupazin',
      halfLifeDays: 50,
      halfLifeOrigin: 'own entry',
    });
  });

  it('has its own conditions judged, marked as the user’s', async () => {
    const planned = await ask('one', { crop: 'oats' });
    // 9 mm on each date that three divides: 40 days in four months and so 360 mm, in every year
    const [water, rate] = planned.conditions;
    expect(water).toMatchObject({
      state: 'open',
      oddsMet: 1,
      byDate: '2021-09-30',
      mark: 'own label',
      source: null,
    });
    expect(rate).toMatchObject({ state: 'met', text: expect.stringContaining('with 1.5 oz/ac') });
    expect(planned.labelDate).toBe('2022-06-01');
    const seen = await ask('one', { crop: 'oats', asOf: '2021-09-20' });
    expect(seen.conditions[0].state).toBe('met');
    expect(seen.labelDate).toBe('2021-10-01');
    const heavy = await ask('one', { crop: 'oats', asOf: '2021-09-20', rateFraction: 1.1 });
    expect(heavy.conditions[1].state).toBe('not met');
    expect(heavy.labelDate).toBe('2022-04-01');
    expect((await ask('one', { crop: 'oats', asOf: '2021-09-20', rateGramsPerHa: 150 })).labelDate).toBe(
      '2022-04-01',
    );
  });

  it('has a condition on texture judged by the soil that is told, a class or sand and clay, and by no other', async () => {
    const on = async (soil: object) => {
      const { conditions, labelDate } = await ask('one', { crop: 'barley', soilClass: undefined, ...soil });
      return [conditions[0].text, labelDate];
    };
    const longer = '2022-04-01';
    expect(await on({})).toEqual([expect.stringContaining('texture is not given'), longer]);
    expect(await on({ soilClass: 'sandy loam' })).toEqual([
      expect.stringMatching(/^Medium or fine soil: not met\./),
      longer,
    ]);
    expect(await on({ soilClass: 'clay' })).toEqual([expect.stringContaining(': met.'), '2021-10-01']);
    expect(await on({ sandPercent: 90, clayPercent: 3 })).toEqual([
      expect.stringContaining('not met'),
      longer,
    ]);
  });

  it('of an interval of zero still waits for its starting rain, with no carryover reckoned', async () => {
    const answer = await ask('one', { crop: 'corn' });
    // 9 mm on 3, 6 and 9 June
    expect(answer).toMatchObject({
      carryoverModelled: false,
      labelDate: '2021-06-09',
      clearDate: '2021-06-09',
    });
    expect(answer.sentence).toContain('the rotation interval is zero');
  });
});

describe('a product of several actives', () => {
  it('of one group adds their residues up', async () => {
    const [one, both] = [await ask('imi'), await ask('two-imi')];
    expect(both.inputs.residual.name).toBe('imazethapyr + imazamox');
    oddsByYear(both).forEach((odds, index) => {
      expect(odds).toBeGreaterThan(oddsByYear(one)[index]);
    });
    expect(cautionOf(both, 'product')[0]).toContain('of one mode-of-action group are added up');
  });

  it('of different groups is ruled by the worst, year by year', async () => {
    const [imi, clom, both] = [await ask('imi'), await ask('clom'), await ask('imi-clom')];
    const worst = oddsByYear(imi).map((odds, index) => Math.max(odds, oddsByYear(clom)[index]));
    oddsByYear(both).forEach((odds, index) => {
      expect(odds).toBeCloseTo(worst[index], 12);
    });
    expect(both.oddsAtPlanting).toBeGreaterThan(0);
    expect(both.inputs.residual.group).toBe('2 + 13');
    expect(cautionOf(both, 'product')[0]).toContain('the worst governs');
  });

  it('leaves out of the load what roots do not take up, and keeps its handling caution', async () => {
    const [burn, plain] = [await ask('burn'), await ask('one')];
    expect(burn.oddsAtPlanting).toBe(plain.oddsAtPlanting);
    expect(cautionOf(burn, 'handling').join(' ')).toMatch(/paraquat: .*(toxic|poison)/i);
    const alone = await answerField({ ...countedQuestion, residual: 'paraquat', crop: 'corn' }, deps);
    expect(cautionOf(alone, 'handling')).toHaveLength(1);
  });
});

describe('what else could be done beside an own entry', () => {
  it('starts from the same label date, odds and clear date', async () => {
    for (const [labelEntry, crop] of [
      ['imi-clom', 'lentil'],
      ['one', 'oats'],
      ['one', 'flax'],
    ]) {
      const answer = await ask(labelEntry, { crop });
      const { asAsked, residual: named } = await alternatives({ ...untold, crop, labelEntry }, deps);
      expect(asAsked).toMatchObject({
        labelDate: answer.labelDate,
        clearDate: answer.clearDate,
        oddsAtPlanting: answer.oddsAtPlanting,
      });
      expect(named).toBe(answer.inputs.residual.name);
    }
  });
});

describe('the two waits behind a label’s number', () => {
  it('are both in the label date of a stand that is harvested or grazed', async () => {
    for (const over of [{}, { standUse: 'harvested' }, { standUse: 'grazed' }]) {
      const answer = await ask('one', { crop: 'flax', ...over });
      expect(answer.labelDate).toBe('2021-11-01');
      expect(answer.inputs.interval.text).toBe('2 months');
      expect(cautionOf(answer, 'stand-use')[0]).toMatch(
        /gives the second apart, 5 months: the label date is the later/,
      );
    }
  });

  it('leave the crop’s own to a cover, in words; the odds are of injury and stay', async () => {
    const cover = await ask('one', { crop: 'flax', standUse: 'cover only' });
    expect(cover.labelDate).toBe('2021-08-01');
    expect(cautionOf(cover, 'stand-use')[0]).toContain('counts as soon as it is');
    expect(cover.oddsAtPlanting).toBe((await ask('one', { crop: 'flax' })).oddsAtPlanting);
  });

  it('move nothing where the label has one number: the exception for covers is told, not applied', async () => {
    const dates = new Set<string>();
    for (const standUse of ['harvested', 'grazed', 'cover only'] as const) {
      const answer = await answerField({ ...countedQuestion, standUse }, deps);
      dates.add(answer.labelDate);
      if (standUse === 'cover only')
        expect(cautionOf(answer, 'stand-use')[0]).toContain('That is not applied here');
      if (standUse === 'grazed') expect(cautionOf(answer, 'stand-use')[0]).toContain('falls under both');
    }
    expect([...dates]).toEqual(['2021-10-01']);
    const rye = await answerField({ ...countedQuestion, crop: 'rye', interval: '3 months' }, deps);
    expect(cautionOf(rye, 'stand-use')[0]).toContain('Rye is taken to be harvested');
  });
});
