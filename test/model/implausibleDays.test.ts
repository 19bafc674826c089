import { expect, it } from 'vitest';
import { implausibleDays } from '../../src/model/weather/implausibleDays.ts';

const DAYS = 4000;
/** A long steady record: rain cycling below 10 mm, temperatures that change daily. */
function columns() {
  return {
    rain: Float64Array.from({ length: DAYS }, (_, day) => day % 10),
    max: Float64Array.from({ length: DAYS }, (_, day) => 20 + (day % 3)),
    min: Float64Array.from({ length: DAYS }, (_, day) => 8 + (day % 2)),
  };
}
const found = ({ rain, max, min }: ReturnType<typeof columns>) =>
  implausibleDays(rain, max, min).map(({ day, rule, value }) => ({ day, rule, value }));

it('finds nothing in a steady record', () => {
  expect(found(columns())).toEqual([]);
});

it('finds each kind where it is put, in order of date', () => {
  const given = columns();
  given.max[50] = 5; // minimum of that day is 8
  given.max[100] = 60;
  given.min[200] = -25;
  given.rain.fill(7, 300, 304);
  given.rain[400] = 28; // the 99.9th percentile is 9, so the limit is 27
  given.max.fill(21, 500, 506);
  given.min.fill(8, 500, 506);
  expect(found(given)).toEqual([
    { day: 50, rule: 'maximum below minimum', value: 5 },
    { day: 100, rule: 'temperature spike', value: 60 },
    { day: 200, rule: 'temperature spike', value: -25 },
    { day: 300, rule: 'same rain days running', value: 7 },
    { day: 400, rule: 'rain far above the rest', value: 28 },
    { day: 500, rule: 'same temperatures days running', value: 21 },
  ]);
});

it('stays silent just under each limit, beside gaps, and about rain in a short record', () => {
  const given = columns();
  given.rain[400] = 27;
  given.rain.fill(7, 300, 303);
  given.max.fill(21, 500, 505);
  given.min.fill(8, 500, 505);
  given.max[100] = 60;
  given.max[101] = Number.NaN;
  expect(found(given)).toEqual([]);
  const short = implausibleDays(
    Float64Array.from({ length: 100 }, (_, day) => (day === 5 ? 900 : 1)),
    new Float64Array(100).fill(Number.NaN),
    new Float64Array(100).fill(Number.NaN),
  );
  expect(short).toEqual([]);
});
