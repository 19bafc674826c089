import { describe, expect, it } from 'vitest';
import { activationOdds, controlWeeks } from '../../src/analysis/weedControl.ts';
import { wilsonInterval } from '../../src/model/odds/wilsonInterval.ts';

/** A year that breaks down a steady amount a day. */
const steady = (perDay: number, days = 1000) => ({
  sums: Float64Array.from({ length: days + 1 }, (_, day) => day * perDay),
  base: 0,
  lastOffset: days,
});

describe('controlWeeks', () => {
  it('is two half-lives to a quarter left, in each year’s own days', () => {
    // Half-life 10 breakdown days: 20 are needed; at 0.5 a day 40 days, at 0.25 80, at 1 20.
    const years = [steady(0.5), steady(0.25), steady(1)];
    const weeks = controlWeeks(years, ['middle', 'dry', 'wet'], 10, 0.25);
    expect(weeks).toEqual({ middle: 40 / 7, dry: 80 / 7, wet: 20 / 7 });
  });

  it('takes the share left that is asked for, and starts at the spray, not at the record', () => {
    const late = { ...steady(0.5), base: 100, lastOffset: 900 };
    expect(controlWeeks([late, late, late], ['dry', 'middle', 'wet'], 10, 0.5).middle).toBe(20 / 7);
  });

  it('is without end where the record does not reach', () => {
    const short = steady(0.01, 100);
    expect(controlWeeks([short, short, short], ['dry', 'middle', 'wet'], 10, 0.25).middle).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});

describe('activationOdds', () => {
  const year = (...rain: number[]) => ({
    liquidRainMm: (first: number, end: number) => Float64Array.from(rain).subarray(first, end),
  });
  const years = [year(0, 13, 0, 50), year(6, 7, 0, 0), year(6, 6.9, 0, 20), year(0, 0, 13, 0)];

  it('is the share of years with enough water on the days that count, the day of spraying the first', () => {
    const even = new Float64Array(4).fill(1);
    expect(activationOdds(years, even, 13, 2).odds).toBe(0.5);
    expect(activationOdds(years, even, 13, 3).odds).toBe(0.75);
    expect(activationOdds(years, even, 13, 4).odds).toBe(1);
    expect(activationOdds(years, even, 13, 2).range).toEqual(wilsonInterval(2, 4));
    expect(activationOdds(years, even, 0, 1).odds).toBe(1);
  });

  it('counts years by their weight', () => {
    const { odds, range } = activationOdds(years, Float64Array.of(3, 1, 1, 1), 13, 2);
    expect(odds).toBeCloseTo(4 / 6, 12);
    // n_eff = 36/12 = 3
    const expected = wilsonInterval(odds * 3, 3);
    expect(range.low).toBeCloseTo(expected.low, 12);
    expect(range.high).toBeCloseTo(expected.high, 12);
  });
});
