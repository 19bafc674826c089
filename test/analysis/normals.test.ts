import { describe, expect, it } from 'vitest';
import { type CalendarWindow, seasonSoFar, windowNormals } from '../../src/analysis/normals.ts';
import { dayNumberOf, isoDateOf, parseIsoDate } from '../../src/calendar.ts';
import type { DailyRain } from '../../src/model/weather/filledRain.ts';
import { RAIN_FILLED } from '../../src/schema/codes.ts';

/** Rain of n mm a day in year 1990 + n, from 1991 to 2022. */
function rainOfYears(
  change: (rain: { rainMm: Float64Array; origin: Uint8Array }) => void = () => {},
): DailyRain {
  const firstDay = dayNumberOf(1991, 1, 1);
  const days = dayNumberOf(2023, 1, 1) - firstDay;
  const rainMm = Float64Array.from(
    { length: days },
    (_, day) => Number(isoDateOf(firstDay + day).slice(0, 4)) - 1990,
  );
  const origin = new Uint8Array(days);
  change({ rainMm, origin });
  return { firstDay, rainMm, origin };
}
const window = (from: [number, number], to: [number, number]): CalendarWindow => ({
  from: { month: from[0], day: from[1] },
  to: { month: to[0], day: to[1] },
});
const JUNE = window([6, 1], [6, 30]);
const index = (date: string) => parseIsoDate(date) - dayNumberOf(1991, 1, 1);

describe('windowNormals', () => {
  it('takes the latest standard 30 years, with terciles half-way between ranks', () => {
    const normals = windowNormals(rainOfYears(), JUNE);
    expect(normals).toMatchObject({
      base: { from: 1991, to: 2020, kind: 'standard' },
      stands: true,
      meanMm: 30 * 15.5,
      medianMm: 30 * 15.5,
      lowerTercileMm: 30 * 10.5,
      upperTercileMm: 30 * 20.5,
    });
    expect(normals?.years.length).toBe(30);
  });

  it('takes a base period as it is given, and says where it is no normal', () => {
    expect(windowNormals(rainOfYears(), JUNE, { from: 2001, to: 2010 })).toMatchObject({
      base: { kind: 'given' },
      stands: true,
      meanMm: 30 * 15.5,
    });
    expect(windowNormals(rainOfYears(), JUNE, { from: 1961, to: 1995 })).toMatchObject({
      stands: false,
      meanMm: 30 * 3,
    });
    expect(windowNormals(rainOfYears(), JUNE, { from: 1961, to: 1970 })).toBeNull();
  });

  it('leaves out years that miss more than 5 % of the window, and falls back on all years with too few', () => {
    const spoil = (years: number) =>
      rainOfYears(({ origin }) => {
        for (let year = 1991; year < 1991 + years; year++) {
          origin.fill(RAIN_FILLED, index(`${year}-06-10`), index(`${year}-06-12`));
        }
      });
    expect(windowNormals(spoil(6), JUNE)).toMatchObject({ base: { kind: 'standard' }, stands: true });
    expect(windowNormals(spoil(6), JUNE)?.years.length).toBe(24);
    expect(windowNormals(spoil(7), JUNE)).toMatchObject({ base: { from: 1998, to: 2022, kind: 'all' } });
  });

  it('runs over the turn of the year, and holds 29 February in leap years only', () => {
    const normals = windowNormals(rainOfYears(), window([12, 31], [3, 1]), { from: 1995, to: 1996 });
    expect(normals?.years).toEqual([
      { year: 1995, rainMm: 5 + 61 * 6, missingDays: 0 },
      { year: 1996, rainMm: 6 + 60 * 7, missingDays: 0 },
    ]);
  });

  it('ends on 28 February where there is no 29th', () => {
    const normals = windowNormals(rainOfYears(), window([2, 1], [2, 29]), { from: 1995, to: 1996 });
    expect(normals?.years.map(({ rainMm }) => rainMm)).toEqual([28 * 5, 29 * 6]);
  });
});

describe('seasonSoFar', () => {
  const soFar = (rain: DailyRain, asOf: string, base?: { from: number; to: number }) => {
    const normals = windowNormals(rain, JUNE, base);
    return normals && seasonSoFar(rain, JUNE, normals, parseIsoDate(asOf));
  };

  it('ranks the days so far against the same days of the base years', () => {
    expect(soFar(rainOfYears(), '2022-06-10')).toEqual({
      firstDay: parseIsoDate('2022-06-01'),
      lastDay: parseIsoDate('2022-06-10'),
      complete: false,
      rainMm: 320,
      missingDays: 0,
      usable: true,
      normalMm: 155,
      percentOfNormal: (320 / 155) * 100,
      rank: 31,
      outOf: 31,
      nonExceedance: 31 / 32,
      third: 'wet',
    });
  });

  it('leaves the season’s own year out of its base, and takes the last whole season before a window begins', () => {
    const got = soFar(rainOfYears(), '2011-05-20', { from: 1991, to: 2020 });
    expect(got).toMatchObject({ complete: true, rainMm: 30 * 20, rank: 20, outOf: 30, third: 'middle' });
    expect(got?.normalMm).toBeCloseTo((30 * (15.5 * 30 - 20)) / 29, 9);
  });

  it('leaves missing days out of every year and says so', () => {
    const rain = rainOfYears(({ origin, rainMm }) => {
      origin.fill(RAIN_FILLED, index('2022-06-02'), index('2022-06-04'));
      rainMm.fill(999, index('2022-06-02'), index('2022-06-04'));
    });
    expect(soFar(rain, '2022-06-10')).toMatchObject({
      rainMm: 8 * 32,
      normalMm: 8 * 15.5,
      missingDays: 2,
      usable: false,
    });
  });
});
