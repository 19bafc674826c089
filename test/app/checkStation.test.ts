import { describe, expect, it } from 'vitest';
import { checkStation } from '../../src/app/checkStation.ts';
import { dayNumberOf } from '../../src/calendar.ts';
import { stationCheckSchema } from '../../src/schema/stationCheck.ts';
import { createFileReader } from '../../src/source/fileReader.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';
import { describeWithRecords } from '../sharedWeather.ts';

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
      problem: { code: 'TOO_FEW_YEARS' },
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

  it('has nothing against a record of ten years, and says so of nine', () => {
    const ofYears = (years: number) => {
      const days = Math.floor(years * 365.25);
      const all = (value: number) => Array.from({ length: days }, () => value);
      const values = { rain: all(10), maxTemp: all(200), minTemp: all(50) };
      return checkStation(smallRecord(values, { firstDay: FIRST_DAY })).problem;
    };
    expect(ofYears(9)?.message).toContain('9 calendar years');
    expect(ofYears(10)).toBeNull();
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

describe('completeness by month', () => {
  it('marks each month by the WMO rules, for rain totals and temperature means apart', () => {
    const rain = rainOfYears();
    blank(rain, 31 + 9, 1); // one day of February 2001
    const maxTemp: (number | null)[] = steady(200);
    blank(maxTemp, 59, 4); // four days running in March
    blank(maxTemp, 90, 5); // five days running in April
    for (let day = 0; day < 10; day++) maxTemp[120 + 3 * day] = null; // ten days scattered over May
    const { completeness, gapCount } = checkStation(recordOf(rain, { maxTemp }));
    expect(completeness.map(({ year }) => year)).toEqual([2001, 2002, 2003]);
    const [first, second] = completeness;
    expect(first.months.slice(0, 5).map((month) => [month.rain, month.temperature])).toEqual([
      ['complete', 'complete'],
      ['incomplete', 'complete'],
      ['complete', 'kept'],
      ['complete', 'incomplete'],
      ['complete', 'kept'],
    ]);
    expect(first).toMatchObject({
      rainDays: 364,
      filledDays: 1,
      rainMonths: 11,
      temperatureMonths: 11,
      rainMm: null,
    });
    expect(first.months[1]).toMatchObject({ days: 28, rainDays: 27, rainMm: null });
    expect(second).toMatchObject({ rainMonths: 12, rainMm: 730 });
    expect(gapCount).toBe(1);
  });

  it('lets a total of several days stand for its days within a month, not across two', () => {
    const rain = rainOfYears();
    blank(rain, 10, 3); // 11-13 January
    blank(rain, 57, 4); // 27 February to 2 March
    const multiDayRain: (number | null)[] = [];
    multiDayRain[12] = 60;
    multiDayRain[60] = 80;
    const [{ months }] = checkStation(recordOf(rain, { multiDayRain })).completeness;
    expect(months.slice(0, 4).map(({ rain: state }) => state)).toEqual([
      'accumulated',
      'incomplete',
      'incomplete',
      'complete',
    ]);
    expect(months[0].rainMm).toBeCloseTo(28 + 6, 9);
    expect(months[0].spreadDays).toBe(3);
  });

  it('has nothing for months before the record begins', () => {
    const late = smallRecord({ rain: rainOfYears() }, { firstDay: FIRST_DAY + 31 });
    const [{ months }] = checkStation(late).completeness;
    expect(months[0]).toMatchObject({ rain: 'none', rainDays: 0, temperature: 'none' });
    expect(months[1].rain).toBe('complete');
  });
});

describe('the last twelve months', () => {
  it('stand against the mean of all years where thirty are not there', () => {
    const rain = rainOfYears();
    blank(rain, DAYS - 40, 1); // 22 November 2003
    const { recent, normals } = checkStation(recordOf(rain));
    expect(normals).toMatchObject({ baseFrom: 2001, baseTo: 2003, standard: false });
    expect(normals.months[0]).toEqual({ month: 1, validYears: 3, stands: true, meanMm: 62 });
    expect(normals.months[10]).toEqual({ month: 11, validYears: 2, stands: false, meanMm: 45 });
    expect(recent?.months[0]).toEqual({
      month: '2003-01',
      missingDays: 0,
      rainMm: 93,
      normalMm: 62,
      percentOfNormal: 150,
    });
    expect(recent?.months[10]).toMatchObject({
      month: '2003-11',
      missingDays: 1,
      rainMm: null,
      percentOfNormal: null,
    });
    expect(recent).toMatchObject({ monthsCounted: 11, percentOfNormal: 150 });
  });

  it('are whole months: a month not yet over is left out, and a short record has none', () => {
    const cut = rainOfYears().slice(0, DAYS - 3);
    expect(
      checkStation(smallRecord({ rain: cut }, { firstDay: FIRST_DAY })).recent?.months.at(-1)?.month,
    ).toBe('2003-11');
    expect(
      checkStation(smallRecord({ rain: rainOfYears().slice(0, 364) }, { firstDay: FIRST_DAY })).recent,
    ).toBeNull();
  });
});

describeWithRecords('a real record', (folder) => {
  it('shows its whole and broken years and the values that look wrong', async () => {
    const record = await createFileReader([`${folder}/derived/USC00241044.dly.gz`]).record('USC00241044');
    const check = checkStation(record);
    expect(stationCheckSchema.parse(check)).toEqual(check);
    expect(check.completeness.length).toBe(130);
    expect(check.completeness.reduce((sum, { rainDays }) => sum + rainDays, 0)).toBe(check.rainDays);
    expect(check.completeness.reduce((sum, { filledDays }) => sum + filledDays, 0)).toBe(check.filledDays);
    expect(check.normals).toMatchObject({ baseFrom: 1991, baseTo: 2020, standard: true });
    const swapped = check.implausible.find(({ rule }) => rule === 'maximum below minimum');
    expect(swapped?.count).toBe(9);
    expect(swapped?.shown[0]).toEqual({ date: '1998-12-01', value: -0.6, against: expect.any(Number) });
  });
});
