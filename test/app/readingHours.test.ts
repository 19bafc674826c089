import { expect, it } from 'vitest';
import { readingHours } from '../../src/app/readingHours.ts';
import { ABSENT } from '../../src/schema/codes.ts';
import { smallRecord } from '../fixtures/weather/smallRecord.ts';

const days = (count: number, time: number) => new Array<number>(count).fill(time);
const recordOf = (times: number[]) => ({
  ...smallRecord({ rain: times.map(() => 1) }),
  rainTimeHhmm: Int32Array.from(times),
});

it('tells periods, exceptions and days without a known hour', () => {
  const times = [...days(40, 700), ...days(5, ABSENT), ...days(3, 1700), ...days(35, 700), ...days(30, 2400)];
  const { firstDay } = smallRecord({});
  expect(firstDay).toBe(10_000); // 1997-05-19
  expect(readingHours(recordOf(times))).toEqual({
    knownDays: 108,
    unknownDays: 5,
    exceptions: 3,
    periods: [
      { time: '07:00', firstDate: '1997-05-19', lastDate: '1997-08-09', readings: 75 },
      { time: '24:00', firstDate: '1997-08-10', lastDate: '1997-09-08', readings: 30 },
    ],
  });
});

it('has no period where no line says an hour, or none lasts', () => {
  expect(readingHours(smallRecord({ rain: [1, 2] }))).toEqual({
    knownDays: 0,
    unknownDays: 2,
    exceptions: 0,
    periods: [],
  });
  expect(readingHours(recordOf(days(29, 805)))).toMatchObject({ exceptions: 29, periods: [] });
});
