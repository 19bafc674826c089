import { expect, it } from 'vitest';
import { carryoverOfOnePart, meanCarryover } from '../../src/model/odds/carryoverProbability.ts';
import fc from '../fastCheck.ts';

const years = fc.array(
  fc.record({
    base: fc.integer({ min: 0, max: 3 }),
    breakdownDays: fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 400, noNaN: true })),
    weight: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
  { minLength: 1, maxLength: 12 },
);
const OFFSET = 2;

it('the mean over years is that of the years one by one, to the last bit, and over the limit where the whole is', () => {
  fc.assert(
    fc.property(
      years,
      fc.double({ min: -2, max: 6, noNaN: true }),
      fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (given, logExcess, ratePerDay, limit) => {
        const courses = given.map(({ base, breakdownDays }) => {
          const sums = new Float64Array(base + OFFSET + 1);
          sums[base + OFFSET] = breakdownDays;
          return { sums, base };
        });
        const relative = Float64Array.from(given, ({ weight }) => weight + 0.01);
        const stretch = {
          kept: given.map((_, year) => year),
          relative,
          total: relative.reduce((sum, weight) => sum + weight, 0),
        };
        const treatment = { logExcess, ratePerDay, soilSpread: 0.35 };
        const whole =
          given.reduce(
            (sum, { breakdownDays }, year) =>
              sum + relative[year] * carryoverOfOnePart(logExcess, ratePerDay * breakdownDays, 0.35),
            0,
          ) / stretch.total;
        expect(meanCarryover(courses, stretch, OFFSET, treatment, Number.POSITIVE_INFINITY)).toBe(whole);
        expect(meanCarryover(courses, stretch, OFFSET, treatment, limit) > limit).toBe(whole > limit);
      },
    ),
    { numRuns: 500 },
  );
});
