import { describe, expect, it } from 'vitest';
import { leafWashOff } from '../../src/model/deposit/leafWashOff.ts';
import { carryoverProbability, type ResiduePart } from '../../src/model/odds/carryoverProbability.ts';
import { median, quantile } from '../../src/model/odds/quantile.ts';
import fc from '../fastCheck.ts';

const SPREAD = 0.35;

/** Share of soils in which the residue is harmful, by counting over a fine grid of the normal distribution. */
function byCounting(parts: readonly ResiduePart[]): number {
  const step = 1e-3;
  let harmed = 0;
  let all = 0;
  for (let z = -8; z <= 8; z += step) {
    const weight = Math.exp((-z * z) / 2);
    const speed = Math.exp(SPREAD * z);
    const index = parts.reduce((sum, part) => sum + Math.exp(part.logExcess - speed * part.decayExponent), 0);
    all += weight;
    if (index > 1) harmed += weight;
  }
  return harmed / all;
}

const part = fc.record({
  logExcess: fc.double({ min: -2, max: 4, noNaN: true }),
  decayExponent: fc.double({ min: 0.01, max: 6, noNaN: true }),
});

describe('probability of harm over soils', () => {
  it('agrees with counting soils, for one part and for several', () => {
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
        expect(Math.abs(carryoverProbability(parts, SPREAD) - byCounting(parts))).toBeLessThan(2e-3);
      }),
      { numRuns: 60 },
    );
  });

  it('is the same for a dose in one part and the same dose in two equal halves', () => {
    const half = { logExcess: 1 - Math.LN2, decayExponent: 0.9 };
    const whole = { logExcess: 1, decayExponent: 0.9 };
    expect(carryoverProbability([half, half], SPREAD)).toBeCloseTo(carryoverProbability([whole], SPREAD), 10);
  });

  it('is 0 for a dose below the harmless level and 1 for a harmful one that has not decayed', () => {
    expect(carryoverProbability([{ logExcess: 0, decayExponent: 0 }], SPREAD)).toBe(0);
    expect(carryoverProbability([{ logExcess: 0.1, decayExponent: 0 }], SPREAD)).toBe(1);
    expect(
      carryoverProbability(
        [
          { logExcess: 0.1, decayExponent: 0 },
          { logExcess: 1, decayExponent: 2 },
        ],
        SPREAD,
      ),
    ).toBe(1);
  });
});

describe('spray on leaves', () => {
  it('neither makes nor loses dose but by decay on the leaf', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 2, maxLength: 120 }),
        (rain) => {
          const { washed, left } = leafWashOff(Float64Array.from(rain), 10, 0.05);
          const down = washed.reduce((sum, { share }) => sum + share, 0);
          expect(down).toBeLessThanOrEqual(1);
          expect(left[0]).toBe(1);
          for (let day = 1; day < left.length; day++) expect(left[day]).toBeLessThanOrEqual(left[day - 1]);
          if (rain.every((mm) => mm === 0)) expect(down).toBe(0);
        },
      ),
    );
  });

  it('ends when a thousandth is left', () => {
    const { washed, left } = leafWashOff(new Float64Array(200).fill(20), 10, 0.05);
    expect(washed.length).toBeLessThan(10);
    expect(left[199]).toBe(0);
  });
});

describe('quantiles', () => {
  it('are of type 7', () => {
    const oneToTen = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
    expect(quantile(oneToTen, 1 / 3)).toBeCloseTo(4, 12);
    expect(median(oneToTen)).toBe(5.5);
    expect(median([3])).toBe(3);
  });

  it('hold years that never clear', () => {
    expect(median([1, 2, Number.POSITIVE_INFINITY])).toBe(2);
    expect(median([1, Number.POSITIVE_INFINITY])).toBe(Number.POSITIVE_INFINITY);
    expect(median([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY])).toBe(Number.POSITIVE_INFINITY);
  });
});
