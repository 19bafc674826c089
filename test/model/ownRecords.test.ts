import { describe, expect, it } from 'vitest';
import { borrowTemperatures } from '../../src/model/weather/borrowTemperatures.ts';
import { filledRain } from '../../src/model/weather/filledRain.ts';
import { irrigationAt, irrigationCourse } from '../../src/model/weather/ownRecords.ts';
import { ABSENT, RAIN_GAUGE, RAIN_OBSERVED } from '../../src/schema/codes.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';

describe('own gauge', () => {
  it('takes the place of a reading and of a gap on its days, zero included, and of nothing outside', () => {
    const rain = Array.from({ length: 400 }, (_, day) => (day === 7 ? null : 30));
    const { firstDay, ...record } = smallRecord({ rain });
    const gauge = [
      { day: firstDay + 5, mm: 0 },
      { day: firstDay + 7, mm: 12.5 },
      { day: firstDay - 1, mm: 99 },
      { day: firstDay + 400, mm: 99 },
    ];
    const filled = filledRain({ firstDay, ...record }, { gauge });
    expect([...filled.rainMm.subarray(4, 9)]).toEqual([3, 0, 3, 12.5, 3]);
    expect([...filled.origin.subarray(4, 9)]).toEqual([
      RAIN_OBSERVED,
      RAIN_GAUGE,
      RAIN_OBSERVED,
      RAIN_GAUGE,
      RAIN_OBSERVED,
    ]);
    expect(filled.rainMm.reduce((sum, mm) => sum + mm, 0)).toBeCloseTo(398 * 3 + 12.5, 9);
  });
});

describe('irrigationCourse', () => {
  it('adds up entries of a day and counts from the first application, before it too', () => {
    const course = irrigationCourse(
      [
        { day: 1003, mm: 10 },
        { day: 998, mm: 5 },
        { day: 1003, mm: 2 },
        { day: 1100, mm: 7 },
        { day: 600, mm: 7 },
      ],
      1000,
      100,
    );
    expect(irrigationAt(course, 3)).toBe(12);
    expect(irrigationAt(course, -2)).toBe(5);
    expect(course.amountsMm.reduce((sum, mm) => sum + mm, 0)).toBe(17);
    expect(irrigationAt(course, 50)).toBe(0);
    expect(irrigationCourse([], 1000, 100).amountsMm.length).toBe(0);
  });
});

describe('borrowTemperatures', () => {
  const lender = smallRecord({ maxTemp: [200, 210, 220], minTemp: [100, null, 120] }, { firstDay: 10_001 });
  const borrower = smallRecord({ rain: [0, 0, 0, 0, 0] });
  const at = (elevationM: number | null, record = borrower) => ({
    ...record,
    station: { ...record.station, elevationM },
  });

  it('lines the days up and adds 6.5 °C per km', () => {
    const got = borrowTemperatures(at(1000), at(1200, lender));
    expect([...got.maxTempTenthsC]).toEqual([ABSENT, 213, 223, 233, ABSENT]);
    expect([...got.minTempTenthsC]).toEqual([ABSENT, 113, ABSENT, 133, ABSENT]);
    expect([...got.rainTenthsMm]).toEqual([0, 0, 0, 0, 0]);
    expect([...borrowTemperatures(at(2000), at(1000, lender)).maxTempTenthsC].slice(1, 2)).toEqual([135]);
  });

  it('adds nothing where a height is unknown', () => {
    expect(borrowTemperatures(at(null), at(1200, lender)).maxTempTenthsC[1]).toBe(200);
    expect(borrowTemperatures(at(1000), at(null, lender)).maxTempTenthsC[1]).toBe(200);
  });
});
