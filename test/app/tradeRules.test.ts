import { describe, expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import type { RainRule } from '../analysis/countedYears.ts';
import { countedDeps, countedQuestion, evenRain, wetRain } from './countedStation.ts';

/** The wet record, with a tenth of its rain from July 2021 on. */
const droughtFrom2021: RainRule = (date, year) =>
  year === 2022 || (year === 2021 && date >= '07-01') ? 0.1 * wetRain(date, year) : wetRain(date, year);

const seasonMore = async (rain: RainRule, over: object = {}) =>
  (await answerField({ ...countedQuestion, ...over }, countedDeps(rain))).cautions
    .filter(({ code }) => code === 'season-more')
    .map(({ text }) => text);

describe('one season more before a sensitive crop', () => {
  it('is advised where a mean year brings under 15 inches, as common practice without a source', async () => {
    const [text, ...more] = await seasonMore(evenRain);
    expect(more).toEqual([]);
    expect(text).toMatch(/a mean year brings 14\.\d in, under 15\.0 in/);
    expect(text).toContain('Common practice, no source');
    expect(await seasonMore(wetRain)).toEqual([]);
  });

  it('is advised in a year of drought, told by the last twelve months observed', async () => {
    expect(await seasonMore(droughtFrom2021)).toEqual([]);
    const [text] = await seasonMore(droughtFrom2021, { asOf: '2022-05-01' });
    expect(text).toMatch(/the twelve months to May 1, 2022 brought .*driest fifth/);
    expect(await seasonMore(wetRain, { asOf: '2022-05-01' })).toEqual([]);
  });

  it('moves no date, tells what is known of the crop, and is silent where nothing is carried over', async () => {
    const dates = await Promise.all(
      [evenRain, wetRain].map(
        async (rain) => (await answerField(countedQuestion, countedDeps(rain))).labelDate,
      ),
    );
    expect(new Set(dates).size).toBe(1);
    expect((await seasonMore(evenRain, { residual: 'imazethapyr', crop: 'canola' }))[0]).toContain(
      'Canola is usually sensitive to residues of group 2.',
    );
    expect((await seasonMore(evenRain))[0]).toContain(
      'Nothing is held here on how sensitive lentil is to flumioxazin.',
    );
    expect(await seasonMore(evenRain, { interval: '0' })).toEqual([]);
    expect(await seasonMore(evenRain, { residual: 'glyphosate', interval: '1 month' })).toEqual([]);
  });
});

describe('published counting rules', () => {
  const rules = async (rain: RainRule, over: object = {}) => {
    const { countingWindows, labelDate } = await answerField(
      { ...countedQuestion, ...over },
      countedDeps(rain),
    );
    return { countingWindows, labelDate };
  };
  /** Five millimetres more each year on 10 July: 5 in 2001, 100 in 2020, 105 in 2021. */
  const rising: RainRule = (date, year) => (date === '07-10' ? 5 * (year - 2000) : 0);

  it('give the odds that their window ends under the sum, from the years', async () => {
    const { countingWindows } = await rules(rising, { country: 'CA', interval: '10 months' });
    const prairie = countingWindows.find(({ id }) => id === 'W02');
    // 75 mm are there in 2015 to 2020
    expect(prairie).toMatchObject({
      state: 'open',
      thresholdMm: 75,
      sumMm: null,
      from: '2021-06-01',
      to: '2021-08-31',
    });
    expect(prairie?.oddsUnder).toBeCloseTo(14 / 21, 10);
    expect(prairie?.range?.years).toBe(21);
  });

  it('give the sum so far, and how it ended', async () => {
    const seen = { country: 'CA', interval: '10 months', asOf: '2021-07-20' };
    const { countingWindows } = await rules(rising, seen);
    expect(countingWindows.find(({ id }) => id === 'W02')).toMatchObject({
      state: 'reached',
      sumMm: 105,
      through: '2021-07-20',
      oddsUnder: 0,
    });
    const under = (await rules(() => 1, { asOf: '2021-09-05' })).countingWindows[0];
    // one millimetre a day from 1 June to 1 September
    expect(under).toMatchObject({
      id: 'W01',
      state: 'under',
      sumMm: 93,
      through: '2021-09-01',
      oddsUnder: 1,
    });
  });

  it('count the days before the application, and no irrigation', async () => {
    const late = {
      appliedOn: '2021-08-15',
      asOf: '2021-08-20',
      irrigation: [{ date: '2021-08-16', mm: 400 }],
    };
    const { countingWindows } = await rules(() => 1, late);
    expect(countingWindows[0]).toMatchObject({ from: '2021-06-01', sumMm: 81, state: 'open' });
  });

  it('say nothing where their window opens after planting', async () => {
    const autumn = await rules(() => 1, { appliedOn: '2021-09-10', plantOn: '2022-05-10' });
    expect(autumn.countingWindows[0]).toMatchObject({
      from: '2022-06-01',
      state: null,
      sumMm: null,
      oddsUnder: null,
    });
  });

  it('are those of the field’s country, and set no date', async () => {
    const us = await rules(evenRain, { interval: '9 months' });
    const ca = await rules(evenRain, { interval: '9 months', country: 'CA' });
    expect(us.countingWindows.map(({ region }) => region)).toEqual([
      'North Dakota and Minnesota',
      'North Dakota',
    ]);
    expect(ca.countingWindows.every(({ region }) => /Saskatchewan|Prairies/.test(region))).toBe(true);
    expect([us.labelDate, ca.labelDate]).toEqual(['2022-03-01', '2022-03-01']);
  });
});
