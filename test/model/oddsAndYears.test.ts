import { describe, expect, it } from 'vitest';
import { InvalidInputError, OutOfRangeError } from '../../src/errors.ts';
import { gammaFromMoments, gammaFromWetDayMean } from '../../src/model/generator/gammaFromMoments.ts';
import {
  longRunWetShare,
  meanSpells,
  wetDayTransitions,
} from '../../src/model/generator/wetDayTransitions.ts';
import { jeffreysInterval } from '../../src/model/odds/jeffreysInterval.ts';
import { wilsonInterval } from '../../src/model/odds/wilsonInterval.ts';
import { effectiveYears } from '../../src/model/years/effectiveYears.ts';
import { outlookWeights } from '../../src/model/years/outlookWeights.ts';
import { weightedMean } from '../../src/model/years/weightedMean.ts';
import fc from '../fastCheck.ts';

const finite = fc.double({ min: -500, max: 500, noNaN: true });
const years = fc.array(finite, { minLength: 1, maxLength: 120 });
const sum = (values: ArrayLike<number>): number => Array.from(values).reduce((a, b) => a + b, 0);

/** Three chances that add up to 1. */
const chances = fc
  .tuple(...[0, 1, 2].map(() => fc.double({ min: 0.001, max: 1, noNaN: true })))
  .map(([a, b, c]) => ({ below: a / (a + b + c), near: b / (a + b + c), above: c / (a + b + c) }));

describe('outlookWeights', () => {
  it.each([
    { below: 1 / 3, near: 1 / 3, above: 1 / 3 },
    { below: 1 / 3, near: 1 / 3, above: 1 - 2 / 3 },
  ])('gives exactly the unweighted mean back for equal thirds', (equal) => {
    fc.assert(
      fc.property(years, (values) => {
        const weights = outlookWeights(values, equal);
        expect(new Set(weights)).toEqual(new Set([1 / values.length]));
        expect(weightedMean(values, weights)).toBe(sum(values) / values.length);
        expect(effectiveYears(weights)).toBe(values.length);
      }),
    );
  });

  it('gives weights that sum to 1 and each third its chance', () => {
    fc.assert(
      fc.property(years, chances, (values, outlook) => {
        const weights = outlookWeights(values, outlook);
        expect(sum(weights)).toBeCloseTo(1, 9);
        expect(Math.min(...weights)).toBeGreaterThanOrEqual(0);
        expect(effectiveYears(weights)).toBeLessThanOrEqual(values.length + 1e-9);
      }),
    );
    const weights = outlookWeights([9, 8, 7, 6, 5, 4, 3, 2, 1], { below: 0.5, near: 0.3, above: 0.2 });
    expect(sum(weights.slice(6))).toBeCloseTo(0.5, 12);
    expect(sum(weights.slice(3, 6))).toBeCloseTo(0.3, 12);
    expect(sum(weights.slice(0, 3))).toBeCloseTo(0.2, 12);
  });

  it('shares a year on a border between two thirds', () => {
    const weights = outlookWeights([1, 2, 3, 4], { below: 0.6, near: 0.3, above: 0.1 });
    // Thirds of 4 years hold 4/3 years each: year 2 is 1/3 below and 2/3 near.
    const expected = [0.6, 0.6 / 3 + (0.3 * 2) / 3, (0.3 * 2) / 3 + 0.1 / 3, 0.1].map((w) => w / (4 / 3));
    expected.forEach((weight, i) => {
      expect(weights[i]).toBeCloseTo(weight, 12);
    });
  });

  it('keeps the input order among equal values', () => {
    const weights = outlookWeights([5, 5, 5], { below: 0.6, near: 0.3, above: 0.1 });
    expect(Array.from(weights, (w) => Number(w.toFixed(12)))).toEqual([0.6, 0.3, 0.1]);
  });

  it.each([
    [[1, 2, 3], { below: 0.5, near: 0.3, above: 0.3 }, 'together they must be 1'],
    [[1, 2, 3], { below: 1.2, near: -0.1, above: -0.1 }, 'at least 0'],
    [[1, 2, 3], { below: Number.NaN, near: 0.5, above: 0.5 }, 'NaN'],
    [[], { below: 0.5, near: 0.3, above: 0.2 }, 'No year was given'],
    [[1, Number.NaN], { below: 0.5, near: 0.3, above: 0.2 }, 'year number 2'],
  ])('refuses %j with %j', (values, outlook, message) => {
    expect(() => outlookWeights(values, outlook)).toThrow(InvalidInputError);
    expect(() => outlookWeights(values, outlook)).toThrow(message);
  });
});

describe('weightedMean and effectiveYears', () => {
  it('ignore the years without weight', () => {
    expect(weightedMean([1, 9, 3], [1, 0, 1])).toBe(2);
    expect(effectiveYears([1, 0, 1])).toBe(2);
  });

  it('refuse weights that cannot weigh', () => {
    expect(() => weightedMean([1], [1, 2])).toThrow('1 values and 2 weights');
    expect(() => weightedMean([1, 2], [0, 0])).toThrow('weight above 0');
    expect(() => weightedMean([1], [-1])).toThrow(OutOfRangeError);
    expect(() => effectiveYears([])).toThrow('weight above 0');
    expect(() => effectiveYears([1, -1])).toThrow(OutOfRangeError);
  });
});

describe('intervals', () => {
  it('hold the share, lie in 0 to 1 and narrow with more years', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (n, share) => {
          const events = Math.round(share * n);
          for (const interval of [wilsonInterval, jeffreysInterval]) {
            const { low, high } = interval(events, n);
            const more = interval(4 * events, 4 * n);
            expect(low).toBeGreaterThanOrEqual(0);
            expect(high).toBeLessThanOrEqual(1);
            expect(low).toBeLessThanOrEqual(events / n);
            expect(high).toBeGreaterThanOrEqual(events / n);
            expect(more.high - more.low).toBeLessThan(high - low);
          }
        },
      ),
    );
  });

  it('take an effective number of years that is not whole', () => {
    const { low, high } = wilsonInterval(0.3 * 28.99, 28.99);
    expect(low).toBeLessThan(wilsonInterval(9, 30).low);
    expect(high).toBeGreaterThan(wilsonInterval(9, 30).high);
  });

  it('refuse more events than years, and no years', () => {
    for (const interval of [wilsonInterval, jeffreysInterval]) {
      expect(() => interval(4, 3)).toThrow('events is 4; it must be from 0 to 3');
      expect(() => interval(0, 0)).toThrow('n is 0; it must be above 0');
    }
    expect(() => jeffreysInterval(1, 3, 1)).toThrow('level is 1');
  });
});

describe('rain generator shortcuts', () => {
  it('give the wet-day share back', () => {
    for (let share = 0.01; share < 1; share += 0.01) {
      const { wetAfterWet, wetAfterDry } = wetDayTransitions(share);
      expect(longRunWetShare(wetAfterWet, wetAfterDry)).toBeCloseTo(share, 12);
    }
  });

  it('never end a run that has no way out', () => {
    expect(meanSpells(1, 0)).toEqual({
      wetDays: Number.POSITIVE_INFINITY,
      dryDays: Number.POSITIVE_INFINITY,
    });
  });

  it('keep the mean on both sides of 3 mm and meet there', () => {
    for (const mean of [0.5, 2.999999, 3, 12]) {
      const { shape, scaleMm } = gammaFromWetDayMean(mean);
      expect(shape * scaleMm).toBeCloseTo(mean, 12);
    }
    expect(gammaFromWetDayMean(3).scaleMm).toBeCloseTo(gammaFromWetDayMean(3 - 1e-9).scaleMm, 6);
  });

  it('refuse shares and amounts that cannot be', () => {
    expect(() => wetDayTransitions(1.1)).toThrow('wetDayShare is 1.1');
    expect(() => longRunWetShare(-0.1, 0.2)).toThrow('wetAfterWet is -0.1');
    expect(() => gammaFromMoments(0, 1)).toThrow('meanMm is 0; it must be above 0');
    expect(() => gammaFromWetDayMean(500)).toThrow('meanMm is 500');
  });
});
