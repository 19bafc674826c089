import { describe, expect, it } from 'vitest';
import { dayNumberOf } from '../../src/calendar.ts';
import { prepareSeries } from '../../src/model/weather/prepareSeries.ts';
import { windowCheckOf } from '../../src/model/weather/usableWindow.ts';
import {
  ABSENT,
  RAIN_FILLED,
  RAIN_OBSERVED,
  RAIN_SPREAD,
  TEMP_CALENDAR_MEAN,
  TEMP_INTERPOLATED,
} from '../../src/schema/codes.ts';
import type { StationRecord } from '../../src/schema/weather.ts';
import fc from '../fastCheck.ts';

const DAYS = 800;

/** Two years and a bit from 2001-01-01: rain of 2 mm, 20 and 10 °C each day, with `change` on top. */
function record(change: (columns: Record<string, Int32Array>) => void): StationRecord {
  const columns = {
    rain: new Int32Array(DAYS).fill(20),
    max: new Int32Array(DAYS).fill(200),
    min: new Int32Array(DAYS).fill(100),
    total: new Int32Array(DAYS).fill(ABSENT),
    count: new Int32Array(DAYS).fill(ABSENT),
  };
  change(columns);
  return {
    station: { id: 'TEST', name: 'Test', latitudeDeg: 45, longitudeDeg: 0, elevationM: 0, invented: true },
    firstDay: dayNumberOf(2001, 1, 1),
    rainTenthsMm: columns.rain,
    maxTempTenthsC: columns.max,
    minTempTenthsC: columns.min,
    multiDayRainTenthsMm: columns.total,
    multiDayCount: columns.count,
    reading: {
      valuesRead: 0,
      droppedByFlag: 0,
      implausible: 0,
      presumedZero: 0,
      duplicated: 0,
      ignoredElements: 0,
      notes: [],
    },
    source: 'test',
  };
}

describe('rain of several days in one total', () => {
  it('is spread over the counted days when all of them are missing', () => {
    const { rainMm, rainOrigin } = prepareSeries(
      record(({ rain, total, count }) => {
        rain.fill(ABSENT, 10, 13);
        total[12] = 90;
        count[12] = 3;
      }),
    );
    expect([...rainMm.subarray(9, 14)]).toEqual([2, 3, 3, 3, 2]);
    expect([...rainOrigin.subarray(9, 14)]).toEqual([
      RAIN_OBSERVED,
      RAIN_SPREAD,
      RAIN_SPREAD,
      RAIN_SPREAD,
      RAIN_OBSERVED,
    ]);
  });

  it('covers the run of missing days where no count is given, 31 at most', () => {
    const { rainMm, rainOrigin } = prepareSeries(
      record(({ rain, total }) => {
        rain.fill(ABSENT, 100, 140);
        total[139] = 310;
      }),
    );
    expect(rainMm[139]).toBe(1);
    expect(rainMm[109]).toBe(1);
    expect(rainOrigin[109]).toBe(RAIN_SPREAD);
    expect(rainOrigin[108]).toBe(RAIN_FILLED);
  });

  it('is left aside where a covered day has its own value', () => {
    const { rainMm, rainOrigin } = prepareSeries(
      record(({ rain, total, count }) => {
        rain.fill(ABSENT, 11, 13);
        total[12] = 900;
        count[12] = 3;
      }),
    );
    expect(rainMm[12]).toBe(2);
    expect(rainOrigin[12]).toBe(RAIN_FILLED);
  });
});

describe('gaps', () => {
  it('fills rain with the mean of its time of year, never with zero', () => {
    const { rainMm, rainOrigin } = prepareSeries(
      record(({ rain }) => {
        rain[400] = ABSENT;
        rain[36] = 320;
      }),
    );
    // 5 February 2002: the 15 calendar days around it hold 44 values of 2 mm and one of 32 mm, in three years.
    expect(rainOrigin[400]).toBe(RAIN_FILLED);
    expect(rainMm[400]).toBeCloseTo((43 * 2 + 32) / 44, 12);
  });

  it('bridges up to 7 missing temperatures by a straight line and longer gaps by calendar means', () => {
    const { maxTempC, tempOrigin } = prepareSeries(
      record(({ max }) => {
        max.fill(ABSENT, 50, 57);
        max[57] = 280;
        max.fill(ABSENT, 200, 208);
      }),
    );
    expect(maxTempC[50]).toBeCloseTo(21, 12);
    expect(maxTempC[53]).toBeCloseTo(24, 12);
    expect(tempOrigin[53]).toBe(TEMP_INTERPOLATED);
    expect(maxTempC[203]).toBe(20);
    expect(tempOrigin[203]).toBe(TEMP_CALENDAR_MEAN);
  });

  it('drops both temperatures where the maximum is below the minimum', () => {
    const { maxTempC, minTempC, tempOrigin } = prepareSeries(
      record(({ max }) => {
        max[300] = 50;
      }),
    );
    expect([maxTempC[300], minTempC[300], tempOrigin[300]]).toEqual([20, 10, TEMP_INTERPOLATED]);
  });

  it('makes both their mean where filling leaves the maximum below the minimum', () => {
    const { maxTempC, minTempC } = prepareSeries(
      record(({ max, min }) => {
        max[300] = ABSENT;
        min[300] = 260;
      }),
    );
    expect([maxTempC[300], minTempC[300]]).toEqual([23, 23]);
  });

  it('refuses a record without temperatures, and one without rain', () => {
    expect(() => prepareSeries(record(({ max }) => max.fill(ABSENT)))).toThrow(
      /no usable daily temperatures/,
    );
    expect(() => prepareSeries(record(({ rain }) => rain.fill(ABSENT)))).toThrow(/without any rain value/);
  });
});

describe('usable windows', () => {
  const check = (missing: readonly [number, number][]) => {
    const origin = new Uint8Array(400);
    for (const [from, to] of missing) origin.fill(RAIN_FILLED, from, to);
    return windowCheckOf(origin);
  };

  it('allow 5 % missing days and runs of 10', () => {
    expect(check([[0, 10]]).usable(0, 200)).toBe(true);
    expect(check([[0, 10]]).usable(0, 199)).toBe(false);
    expect(check([[50, 61]]).usable(0, 400)).toBe(false);
    expect(
      check([
        [50, 60],
        [70, 80],
      ]).usable(0, 400),
    ).toBe(true);
  });

  it('count of a run only the days inside the window', () => {
    const windows = check([[50, 65]]);
    expect(windows.usable(55, 345)).toBe(true);
    expect(windows.usable(54, 346)).toBe(false);
    expect(windows.usable(0, 51)).toBe(true);
  });

  it('agree with counting day by day, wherever the gaps lie', () => {
    const stretch = fc.tuple(fc.integer({ min: 0, max: 399 }), fc.integer({ min: 1, max: 25 }));
    fc.assert(
      fc.property(
        fc.array(stretch, { maxLength: 12 }),
        fc.integer({ min: 0, max: 399 }),
        fc.integer({ min: 1, max: 400 }),
        (stretches, start, length) => {
          const missing = new Uint8Array(400);
          for (const [first, days] of stretches) missing.fill(1, first, first + days);
          const inside = missing.subarray(start, start + length);
          let [run, longest] = [0, 0];
          for (const day of inside) {
            run = day === 1 ? run + 1 : 0;
            longest = Math.max(longest, run);
          }
          const expected =
            start + length <= 400 &&
            inside.reduce((sum, day) => sum + day, 0) <= 0.05 * length &&
            longest <= 10;
          const gaps = stretches.map(([first, days]): [number, number] => [first, first + days]);
          expect(check(gaps).usable(start, length)).toBe(expected);
        },
      ),
    );
  });

  it('must lie in the record', () => {
    expect(check([]).usable(-1, 10)).toBe(false);
    expect(check([]).usable(391, 10)).toBe(false);
    expect(check([]).usable(390, 10)).toBe(true);
  });
});
