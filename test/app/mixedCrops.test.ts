import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { answerSchema } from '../../src/schema/answer.ts';
import { refusalOf } from '../refusal.ts';
import { countedDeps, countedQuestion, evenRain } from './countedStation.ts';

const deps = countedDeps(evenRain);
const ask = (crop: string, over: object = {}) =>
  answerField({ ...countedQuestion, plantOn: '2021-10-20', crop, ...over }, deps);

describe('a mix of crops', () => {
  it('is ruled by its most restricted species: latest label date, worst odds, last clear date', async () => {
    const [lentil, oats, mix] = [await ask('lentil'), await ask('oats'), await ask('lentil + oats')];
    expect([lentil.labelDate, oats.labelDate, mix.labelDate]).toEqual([
      '2021-10-01',
      '2022-06-01',
      '2022-06-01',
    ]);
    expect(mix.mix.map(({ crop, labelDate, interval }) => [crop, interval, labelDate])).toEqual([
      ['lentil', '4 months', '2021-10-01'],
      ['oats', '12 months', '2022-06-01'],
    ]);
    expect(mix.oddsAtPlanting).toBe(oats.oddsAtPlanting);
    expect(mix.oddsAtPlanting).toBeGreaterThan(lentil.oddsAtPlanting ?? 1);
    expect(answerSchema.safeParse(mix).error).toBeUndefined();
    expect(mix.mix.map(({ rules }) => rules)).toEqual([false, true]);
    expect(mix.clearDate).toBe(oats.clearDate);
    expect(mix.mix[0].clearDate).toBe('2022-06-01');
    expect(mix.inputs.crop).toBe('lentil + oats (judged by oats)');
    expect(mix.cautions[0].text).toBe(
      'A mix is ruled by its most restricted species: oats has the worst odds and the latest label date (June 1, 2022).',
    );
  });

  it('does not hang on the order of its species', async () => {
    const [one, other] = [await ask('lentil + oats'), await ask('oats + lentil')];
    expect([other.labelDate, other.clearDate, other.oddsAtPlanting]).toEqual([
      one.labelDate,
      one.clearDate,
      one.oddsAtPlanting,
    ]);
  });

  it('names the species of each condition and of each caution on an interval', async () => {
    const { conditions, cautions } = await ask('lentil + oats');
    expect(conditions.map(({ text }) => text.split(':')[0])).toEqual(['lentil', 'lentil', 'oats', 'oats']);
    expect(cautions.some(({ text }) => text.startsWith('lentil: The interval of 4 months'))).toBe(true);
  });

  it('of species whose intervals are all zero has no odds, and the latest label date', async () => {
    const mix = await ask('soybean + corn', { interval: '0' });
    expect(mix).toMatchObject({ carryoverModelled: false, labelDate: '2021-06-01' });
  });

  it('with one species that the label does not let follow says so', async () => {
    const mix = await ask('soybean + sorghum', { residual: 'dicamba' });
    expect(mix.advice).toContain('The label does not let soybean follow');
  });

  it('is refused where it cannot be read or a species is unknown', async () => {
    expect((await refusalOf(ask('lentil + '))).code).toBe('CROP_MIX');
    expect((await refusalOf(ask('lentil + no such crop'))).code).toBe('CROP_UNKNOWN');
    expect((await refusalOf(ask('a+b+c+d+e+f+g+h+i'))).code).toBe('CROP_MIX');
  });
});
