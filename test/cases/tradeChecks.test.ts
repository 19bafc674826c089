import { expect, it } from 'vitest';
import type { StationClimate } from '../../src/analysis/stationClimate.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { answer, climateOf } from './seasonOf.ts';

/**
 * Common practice, no source: residuals labelled for one or two months have lasted three to six in dry country;
 * under 15 inches of rain a year a season is added before sensitive crops. Held within 10 %: median months to
 * clear in the dry third, all years, and odds at the label date of humid stations.
 */
const MONTH_DAYS = 365.25 / 12;
const dry = [
  ['USC00241044', 45.662, 4.1, 2.0, 17.2],
  ['X00CHAMPION', 40.4, 3.0, 2.1, 20.3],
  ['USW00023066', 39.134, 10.2, 3.3, 24.9],
] as const;
const humid = [
  ['USW00003870', 34.883, 1.4, 2.7, 12.1],
  ['CA006105976', 45.383, 1.3, 2.3, 12.3],
] as const;

const everyYear = { base: {} };
const within = (actual: number, expected: number) => {
  expect(actual).toBeGreaterThan(expected * 0.9);
  expect(actual).toBeLessThan(expected * 1.1);
};

function monthsToClear(climate: StationClimate, appliedOn: string, months: number, third: number): number {
  const plantOn = `${Number(appliedOn.slice(0, 4)) + Math.ceil(months / 12)}${appliedOn.slice(4)}`;
  const { thirds } = answer(climate, { appliedOn, interval: { months, days: 0 }, plantOn, over: everyYear });
  return (thirds[third].medianDaysToClear ?? Number.NaN) / MONTH_DAYS;
}

describeWithRecords('facts of the trade', (folder) => {
  it.each(dry)('dry third at %s', async (station, latitude, two, one, twelve) => {
    const climate = await climateOf(`${folder}/derived`, station, latitude);
    within(monthsToClear(climate, '2020-07-01', 2, 0), two);
    within(monthsToClear(climate, '2020-08-10', 1, 0), one);
    within(monthsToClear(climate, '2020-08-10', 12, 0), twelve);
  });

  it('needs a season more at 222 mm a year, in middle and wet years too', async () => {
    const climate = await climateOf(`${folder}/derived`, 'USW00023066', 39.134);
    within(monthsToClear(climate, '2020-08-10', 12, 1), 23.8);
    within(monthsToClear(climate, '2020-08-10', 12, 2), 22.4);
  });

  for (const [station, latitude, one, two, twelve] of humid) {
    it(`holds to the label at humid ${station}`, async () => {
      const climate = await climateOf(`${folder}/ghcnd`, station, latitude);
      for (const [months, expected] of [
        [1, one],
        [2, two],
        [12, twelve],
      ] as const) {
        const plantOn = months === 12 ? '2021-08-10' : '2020-12-01';
        const got = answer(climate, { interval: { months, days: 0 }, plantOn, over: everyYear });
        within((got.thirds[0].medianDaysToClear ?? Number.NaN) / MONTH_DAYS, expected);
        expect(got.oddsAtLabel).toBeGreaterThanOrEqual(0.1 * 0.9);
        expect(got.oddsAtLabel).toBeLessThanOrEqual(0.17 * 1.1);
      }
    });
  }
});
