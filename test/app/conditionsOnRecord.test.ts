import { expect, it } from 'vitest';
import { answerField } from '../../src/app/answerField.ts';
import { createClimateCache } from '../../src/app/climateCache.ts';
import { readLabelEntry } from '../../src/app/labelBook.ts';
import { meanAnnualRainMm } from '../../src/app/meanAnnualRain.ts';
import { readQuestion } from '../../src/app/readQuestion.ts';
import { questionSchema } from '../../src/schema/question.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { catalogue } from '../catalogue/loaded.ts';
import { describeWithRecords } from '../sharedWeather.ts';

/*
 * Counted apart from this program, by summing the record's own values: 37 years of 1981-2018 have a usable window of
 * 10 August to 9 May (1995 lacks 30 days); 25 of them bring 300 mm and more. The season of 2020 brought 161.3 mm by
 * 1 March 2021 and 268.0 mm by 9 May; with the rest of each year's window 28 of 37 reach 250 mm. From 1 June to
 * 1 September 2020 fell 129.1 mm. 118 calendar years are whole enough, with 474.78 mm in the mean.
 */
describeWithRecords('label conditions on a station record', (folder) => {
  const entryOf = (minMm: number) =>
    readLabelEntry({
      id: 'asks',
      name: 'Asks for rain (invented)',
      actives: [{ name: 'imazethapyr' }],
      intervals: [
        {
          crop: 'lentil',
          interval: '9 months',
          clauses: [
            {
              kind: 'water',
              minMm,
              counts: 'rain',
              window: { from: 'application', to: 'interval end' },
              ifNot: { months: 18 },
            },
          ],
        },
      ],
      labelVersion: 'invented',
      enteredOn: '2020-08-01',
    });
  const climates = createClimateCache(createFileReader([`${folder}/derived/USC00241044.dly.gz`]));
  const question = {
    station: 'USC00241044',
    latitudeDeg: 45.662,
    appliedOn: '2020-08-10',
    residual: 'imazethapyr',
    crop: 'lentil',
    plantOn: '2021-05-10',
    baseFrom: 1981,
    baseTo: 2018,
    labelEntry: 'asks',
  };
  const ask = (minMm: number, over: object = {}) => {
    const stored = { version: 1, entry: entryOf(minMm) };
    const labels = { labels: async () => [stored], label: async () => stored };
    return answerField({ ...question, ...over }, { catalogue, climates, version: 'test', labels });
  };

  it('give the odds that a count of the record gives', async () => {
    const { conditions, labelDate } = await ask(300);
    expect(conditions[0]).toMatchObject({ state: 'open', amountMm: null, byDate: '2021-05-09' });
    expect(conditions[0].oddsMet).toBeCloseTo(25 / 37, 12);
    expect(conditions[0].range?.low).toBeCloseTo(0.5146, 4);
    expect(conditions[0].range?.high).toBeCloseTo(0.8037, 4);
    expect(labelDate).toBe('2022-02-10');
  });

  it('follow the season: so far, and how it ended', async () => {
    const march = (await ask(250, { asOf: '2021-03-01' })).conditions[0];
    expect(march.amountMm).toBeCloseTo(161.3, 6);
    expect(march.oddsMet).toBeCloseTo(28 / 37, 12);
    const may = await ask(300, { asOf: '2021-05-09' });
    expect(may.conditions[0]).toMatchObject({ state: 'not met', oddsMet: 0, range: null });
    expect(may.conditions[0].amountMm).toBeCloseTo(268, 6);
    expect(may.labelDate).toBe('2022-02-10');
    const less = await ask(250, { asOf: '2021-05-09' });
    expect([less.conditions[0].state, less.labelDate]).toEqual(['met', '2021-05-10']);
    // the cross-check odds of nine months, which conditions leave alone
    expect((await ask(250, { asOf: '2021-05-09' })).inputs.interval.text).toBe('9 months');
  });

  it('stand beside the summer’s sum against the published rule, and the rain of a mean year', async () => {
    const { countingWindows } = await ask(250, { asOf: '2020-12-01' });
    expect(countingWindows[0]).toMatchObject({
      id: 'W01',
      state: 'under',
      from: '2020-06-01',
      to: '2020-09-01',
    });
    expect(countingWindows[0].sumMm).toBeCloseTo(129.1, 6);
    const { climate } = await climates.of(readQuestion(questionSchema, question));
    expect(meanAnnualRainMm(climate)).toBeCloseTo(474.78, 2);
  });
});
