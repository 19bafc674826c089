import { describe, expect, it } from 'vitest';
import { soilParts } from '../../src/analysis/residueCourse.ts';
import { leafWashOff } from '../../src/model/deposit/leafWashOff.ts';

const DAYS = 60;
const leafLoss = { foliageHalfLifeDays: 10, washOffPerMm: 0.05 };

/** Share of the dose that has reached the soil by an offset, decay in the soil aside. */
function reached(canopyFraction: number, rainMm: Record<number, number>, offset: number): number {
  const rain = Float64Array.from({ length: DAYS }, (_, day) => rainMm[day] ?? 0);
  const sums = new Float64Array(DAYS + 1);
  const trace = {
    year: 2000,
    lastOffset: DAYS,
    sums,
    base: 0,
    liquidRainMm: (first: number, end: number) => rain.subarray(first, end),
    labelRun: () => ({ sums, base: 0 }),
  };
  const treatment = { trace, offsetDays: 0, logMargin: 0, load: 1, canopyFraction, siteHalfLife: 30 };
  return soilParts([treatment], leafLoss, offset).reduce(
    (sum, { logExcess }) => sum + Math.exp(logExcess),
    0,
  );
}

describe('a nearly closed canopy of weeds', () => {
  it('keeps nearly all of the dose from the soil while it stays dry', () => {
    for (const offset of [0, 5, 30, 59]) expect(reached(0.95, {}, offset)).toBeCloseTo(0.05, 12);
    expect(reached(0, {}, 30)).toBe(1);
    expect(reached(1, {}, 30)).toBe(0);
  });

  it('lets go of most of what is left on the day of a good rain, which counts from the next day on', () => {
    const rain = { 3: 25 };
    expect(reached(0.95, rain, 3)).toBeCloseTo(0.05, 12);
    const expected = 0.05 + 0.95 * 2 ** -0.3 * (1 - Math.exp(-0.05 * 25));
    expect(reached(0.95, rain, 4)).toBeCloseTo(expected, 12);
    expect(expected).toBeGreaterThan(0.55);
  });

  it('loses on the leaves what no rain fetches: a late rain brings little', () => {
    const late = reached(0.95, { 40: 25 }, 41) - 0.05;
    expect(late).toBeCloseTo(0.95 * 2 ** -4 * (1 - Math.exp(-1.25)), 12);
    expect(late).toBeLessThan(0.05);
    const { washed, left } = leafWashOff(new Float64Array(DAYS), 10, 0.05);
    expect(washed).toEqual([]);
    expect(left[10]).toBeCloseTo(0.5, 12);
  });
});
