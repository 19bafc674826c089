import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { breakdownRecord } from '../../src/analysis/breakdownRecord.ts';
import type { StationClimate } from '../../src/analysis/stationClimate.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { answer, assumptions, climateOf, dateAt, plainApplication, plainQuestion } from './seasonOf.ts';

/**
 * Numbers of an independent implementation of the same model on the real record of USC00241044
 * (latitude 45.662): applied 2020-08-10, field half-life 60 days, 1981-2018, odds limit 0.10.
 * Tolerance: 0.002 on odds, 0.02 on demand, 1 day on dates.
 */
const ODDS = 0.002;
const DEMAND = 0.02;
const DAYS = 1;

/** The rows as texts, by column. */
const rows = parse(readFileSync(new URL('./cross-check.csv', import.meta.url)), { columns: true }) as Record<
  string,
  string
>[];

const soils = [
  ['sand', 0.6, [0.702, 0.524, 0.575]],
  ['sandy loam', 0.6, [0.556, 0.388, 0.395]],
  ['loam', 0, [0.625, 0.453, 0.454]],
  ['loam', 1, [0.285, 0.186, 0.141]],
  ['clay', 0.6, [0.399, 0.259, 0.21]],
] as const;

/** Largest difference seen for each tolerance, printed at the end. */
const worst = new Map<number, number>();

function expectNear(actual: number, expected: number, tolerance: number): void {
  const difference = Math.abs(actual - expected);
  worst.set(tolerance, Math.max(worst.get(tolerance) ?? 0, difference));
  expect(difference, `${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
}
const expectDate = (actual: string | null, expected: string) =>
  expectNear(parseIsoDate(actual ?? '0001-01-01'), parseIsoDate(expected), DAYS);

describeWithRecords('cross-check against an independent implementation', (folder) => {
  let climate: StationClimate;
  beforeAll(async () => {
    climate = await climateOf(`${folder}/derived`, 'USC00241044', 45.662);
  });

  afterAll(() => {
    for (const [name, tolerance] of [
      ['odds', ODDS],
      ['demand', DEMAND],
      ['days', DAYS],
    ] as const) {
      console.log(
        `cross-check: worst difference in ${name} ${worst.get(tolerance)?.toPrecision(2)}, allowed ${tolerance}`,
      );
    }
  });

  it('has the published share of moist-soil breakdown over the whole record', () => {
    const { layer } = plainQuestion;
    const record = breakdownRecord(climate, layer, plainApplication.response, assumptions);
    const { days } = climate.series;
    expectNear(record.sums[days] / record.warmthSums[days], 0.522, 0.0005);
    expectNear(record.labelSums[days] / record.warmthSums[days], 0.6587, 0.0005);
    expectNear((record.sums[days] / days) * 365.25, 67.72, 0.02);
  });

  it('has six rows to compare', () => {
    expect(rows.length).toBe(6);
  });

  for (const row of rows) {
    const number = (column: string) => Number(row[column]);
    it(`${row.months} months ${row.days} days before ${row.plantOn}`, () => {
      const got = answer(climate, {
        interval: { months: number('months'), days: number('days') },
        plantOn: row.plantOn,
      });
      expect(got.years.length).toBe(number('years'));
      expect(dateAt(got, got.labelOffset)).toBe(row.labelDate);
      expectNear(got.demands[0], number('demand'), DEMAND);
      expectNear(got.oddsAtPlanting, number('odds'), ODDS);
      expectNear(got.range.low, number('low'), ODDS);
      expectNear(got.range.high, number('high'), ODDS);
      expectNear(got.oddsAtLabel, number('atLabel'), ODDS);
      expectDate(dateAt(got, got.clearOffset), row.clearDate);
      expect(got.thirds.map(({ name }) => name)).toEqual(['dry', 'middle', 'wet']);
      for (const { name, odds, medianDaysToClear } of got.thirds) {
        const column = name[0].toUpperCase() + name.slice(1);
        expectNear(odds, number(`odds${column}`), ODDS);
        expectNear(medianDaysToClear ?? Number.NaN, number(`clear${column}`), DAYS);
      }
    });
  }

  it('gives the same season as of 2021-03-01', () => {
    const got = answer(climate, {
      interval: { months: 9, days: 0 },
      plantOn: '2021-05-10',
      over: { asOfDay: parseIsoDate('2021-03-01') },
    });
    expectNear(got.oddsAtPlanting, 0.5201, ODDS);
    expectNear(got.medianBreakdownDays, 32.83, DEMAND);
    expect(got.thirds.length).toBe(3);
    [0.577, 0.498, 0.487].forEach((odds, index) => {
      expectNear(got.thirds[index].odds, odds, ODDS);
    });
    expectDate(dateAt(got, got.clearOffset), '2021-07-07');
  });

  it.each(soils)('odds at the label date on %s with cover %f', (textureClass, cover, expected) => {
    const layer = topsoilLayer({ textureClass }, 2, cover);
    [2, 9, 12].forEach((months, index) => {
      const got = answer(climate, { interval: { months, days: 0 }, plantOn: '2021-08-15', over: { layer } });
      expectNear(got.oddsAtLabel, expected[index], ODDS);
    });
  });

  it('does not count frozen ground as label days', () => {
    const got = answer(climate, {
      appliedOn: '2020-12-20',
      interval: { months: 0, days: 14 },
      plantOn: '2021-05-10',
    });
    expectNear(got.demands[0], 1.4, DEMAND);
    expectNear(got.oddsAtLabel, 0.971, ODDS);
    expectDate(dateAt(got, got.clearOffset), '2021-03-24');
  });
});
