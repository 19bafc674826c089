import { describe, expect, it } from 'vitest';
import { checkStation } from '../../src/app/checkStation.ts';
import { dayNumberOf } from '../../src/calendar.ts';
import { stationCheckSchema } from '../../src/schema/stationCheck.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';

// 2001 to 2003, 1 mm every day of 2001, 2 mm of 2002, 3 mm of 2003.
const FIRST_DAY = dayNumberOf(2001, 1, 1);
const DAYS = 3 * 365;
const rainOfYears = (): (number | null)[] =>
  Array.from({ length: DAYS }, (_, day) => 10 * (1 + Math.floor(day / 365)));
const steady = (value: number) => Array.from({ length: DAYS }, () => value);

const blank = (values: (number | null)[], from: number, count: number) =>
  values.fill(null, from, from + count);

function recordOf(rain: (number | null)[], more = {}) {
  return smallRecord({ rain, maxTemp: steady(200), minTemp: steady(50), ...more }, { firstDay: FIRST_DAY });
}

describe('checkStation', () => {
  it('tells extent and yearly rain of a whole record', () => {
    const check = checkStation(recordOf(rainOfYears()));
    expect(stationCheckSchema.parse(check)).toEqual(check);
    expect(check).toMatchObject({
      firstDate: '2001-01-01',
      lastDate: '2003-12-31',
      days: DAYS,
      rainDays: DAYS,
      rainMissingFraction: 0,
      spreadDays: 0,
      filledDays: 0,
      longestGaps: [],
      temperatureDays: DAYS,
      temperatureMissingFraction: 0,
      fullYears: 3,
      meanAnnualRainMm: 730,
      driestYear: { year: 2001, rainMm: 365 },
      wettestYear: { year: 2003, rainMm: 1095 },
      problem: null,
    });
  });

  it('lists the longest gaps, and leaves out years with more than 2 % of days missing', () => {
    const rain = rainOfYears();
    blank(rain, 10, 7); // 2001: 358 of 365 days is 98.08 %
    blank(rain, 365 + 3, 8); // 2002: 357 days, 97.8 %
    const check = checkStation(recordOf(rain));
    expect(check.filledDays).toBe(15);
    expect(check.rainMissingFraction).toBeCloseTo(15 / DAYS, 12);
    expect(check.longestGaps).toEqual([
      { firstDate: '2002-01-04', lastDate: '2002-01-11', days: 8 },
      { firstDate: '2001-01-11', lastDate: '2001-01-17', days: 7 },
    ]);
    expect(check.fullYears).toBe(2);
    expect(check.driestYear).toEqual({ year: 2001, rainMm: 358 });
  });

  it('shows five gaps at most', () => {
    const rain = rainOfYears();
    for (let gap = 0; gap < 7; gap++) blank(rain, 20 * gap, 1 + (gap % 3));
    expect(checkStation(recordOf(rain)).longestGaps.map(({ days }) => days)).toEqual([3, 3, 2, 2, 1]);
  });

  it('counts days of a total of several days as spread, not as a gap, and their rain in the year', () => {
    const rain = rainOfYears();
    blank(rain, 100, 3);
    const multiDayRain: (number | null)[] = [];
    const multiDayCount: (number | null)[] = [];
    multiDayRain[102] = 900;
    multiDayCount[102] = 3;
    const check = checkStation(recordOf(rain, { multiDayRain, multiDayCount }));
    expect(check).toMatchObject({ spreadDays: 3, filledDays: 0, rainDays: DAYS - 3, longestGaps: [] });
    expect(check.driestYear?.rainMm).toBeCloseTo(362 + 90, 9);
  });

  it('says why a record without temperatures or without rain answers nothing, and still reports the rest', () => {
    const noTemperatures = checkStation(smallRecord({ rain: rainOfYears() }, { firstDay: FIRST_DAY }));
    expect(noTemperatures).toMatchObject({ fullYears: 3, temperatureDays: 0, temperatureMissingFraction: 1 });
    expect(noTemperatures.problem?.code).toBe('TEMPERATURES_MISSING');
    const noRain = checkStation(
      smallRecord({ maxTemp: steady(200), minTemp: steady(50) }, { firstDay: FIRST_DAY }),
    );
    expect(noRain).toMatchObject({ rainDays: 0, fullYears: 0, meanAnnualRainMm: null, driestYear: null });
    expect(noRain.problem?.code).toBe('RECORD_EMPTY');
  });
});
