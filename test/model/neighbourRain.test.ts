import { describe, expect, it } from 'vitest';
import { dayNumberOf } from '../../src/calendar.ts';
import { filledRain } from '../../src/model/weather/filledRain.ts';
import { fillFromNeighbours } from '../../src/model/weather/neighbourRain.ts';
import { normalRatioAmount } from '../../src/model/weather/normalRatio.ts';
import { windowCheckOf } from '../../src/model/weather/usableWindow.ts';
import { RAIN_FILLED, RAIN_NEIGHBOUR, RAIN_OBSERVED } from '../../src/schema/codes.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';

const FIRST_DAY = dayNumberOf(2001, 1, 1);
const DAYS = dayNumberOf(2013, 1, 1) - FIRST_DAY;
/** Twelve years of rain on every fifth day. */
const rainOf = (mm: number) => Float64Array.from({ length: DAYS }, (_, day) => (day % 5 === 0 ? mm : 0));
const neighbour = (mm: number, stationId = 'n') => ({ stationId, firstDay: FIRST_DAY, rainMm: rainOf(mm) });

describe('normalRatioAmount', () => {
  it('is the plain mean where all normals lie within 10 %, the ratio as soon as one does not', () => {
    const two = (normal: number) => [
      { gaugeNormal: 100, normal: 95, amount: 10 },
      { gaugeNormal: 100, normal, amount: 20 },
    ];
    expect(normalRatioAmount(two(110))).toBe(15);
    expect(normalRatioAmount(two(111))).toBeCloseTo((10 / 0.95 + 20 / 1.11) / 2, 12);
  });
});

describe('fillFromNeighbours', () => {
  it('fills a gap by the ratio of the normals, marks it, and leaves other days alone', () => {
    const rainMm = rainOf(10);
    rainMm.fill(Number.NaN, 100, 110);
    const origin = new Uint8Array(DAYS);
    const helped = fillFromNeighbours(rainMm, origin, FIRST_DAY, [neighbour(5)]);
    expect(helped).toEqual([10]);
    expect(rainMm[100]).toBeCloseTo(10, 1);
    expect(rainMm[101]).toBe(0);
    expect([...origin.subarray(99, 111)]).toEqual([
      RAIN_OBSERVED,
      ...new Array(10).fill(RAIN_NEIGHBOUR),
      RAIN_OBSERVED,
    ]);
    const before = rainOf(10);
    expect(rainMm.every((mm, day) => origin[day] === RAIN_NEIGHBOUR || mm === before[day])).toBe(true);
  });

  it('uses the neighbours that measured that day, and leaves days that none measured', () => {
    const rainMm = rainOf(10);
    rainMm.fill(Number.NaN, 100, 106);
    const a = neighbour(20);
    const b = neighbour(40);
    a.rainMm[100] = Number.NaN;
    a.rainMm[105] = Number.NaN;
    b.rainMm[105] = Number.NaN;
    const origin = new Uint8Array(DAYS);
    expect(fillFromNeighbours(rainMm, origin, FIRST_DAY, [a, b])).toEqual([4, 5]);
    expect(rainMm[100]).toBeCloseTo(10, 1);
    expect(rainMm[105]).toBeNaN();
    expect(origin[105]).toBe(RAIN_OBSERVED);
  });

  it('does not use a neighbour with too few shared days or without any rain in that month', () => {
    const gap = () => {
      const rainMm = rainOf(10);
      rainMm.fill(Number.NaN, 100, 106);
      return rainMm;
    };
    const young = { ...neighbour(20), rainMm: rainOf(20).fill(Number.NaN, 8 * 365) };
    const dry = neighbour(0);
    expect(fillFromNeighbours(gap(), new Uint8Array(DAYS), FIRST_DAY, [young, dry])).toEqual([0, 0]);
  });
});

describe('filledRain with neighbours', () => {
  const tenths = [...rainOf(10)].map((mm, day) => (day >= 100 && day < 115 ? null : mm * 10));
  const record = smallRecord({ rain: tenths }, { firstDay: FIRST_DAY });

  it('fills from neighbours before the mean of the time of year, and still counts the days as missing', () => {
    const partial = neighbour(10);
    partial.rainMm[114] = Number.NaN;
    const { origin, rainMm, neighbourDays } = filledRain(record, { neighbours: [partial] });
    expect(neighbourDays).toEqual([14]);
    expect(origin[113]).toBe(RAIN_NEIGHBOUR);
    expect(origin[114]).toBe(RAIN_FILLED);
    expect(rainMm[114]).toBeCloseTo(filledRain(record).rainMm[114], 12);
    expect(windowCheckOf(origin).usable(90, 365)).toBe(false);
    expect(windowCheckOf(origin).usable(200, 365)).toBe(true);
  });
});
