import { expect, it } from 'vitest';
import { timeOfDayIn } from '../../src/source/timeOfDay.ts';

it.each([
  ['0000', 0],
  ['0705', 705],
  ['2359', 2359],
  ['2400', 2400],
])('reads %s', (text, time) => {
  expect(timeOfDayIn(text)).toBe(time);
});

it.each(['', '700', '07000', '2401', '2500', '0760', '7:00', '+700', '1e03', ' 700', '-100'])(
  'takes %j for no time',
  (text) => {
    expect(timeOfDayIn(text)).toBeNaN();
  },
);
