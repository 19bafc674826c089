import { describe, expect, it } from 'vitest';
import { phFactor } from '../../src/model/breakdown/phFactor.ts';
import type { PhResponse } from '../../src/schema/phResponse.ts';
import { catalogue } from '../catalogue/loaded.ts';

const told = { words: 'longer at high pH', caution: 'none', mark: 'computed', sources: ['S26'] } as const;
const slope: PhResponse = {
  kind: 'slope',
  ...{ factorPerUnit: 2, referencePh: 7, lowPh: 5, highPh: 8 },
  ...{ ...told, sources: [...told.sources] },
};
const steps: PhResponse = {
  kind: 'steps',
  steps: [
    { toPh: 6.4, factor: 2 },
    { fromPh: 6.4, toPh: 7, factor: 1.4 },
    { fromPh: 7, factor: 0.66 },
  ],
  ...{ ...told, sources: [...told.sources] },
};
const responseOf = (name: string) => catalogue.actives.find(({ isoName }) => isoName === name)?.ph ?? null;

describe('phFactor', () => {
  it('is 1 at the reference, and where pH, response or its size is not known', () => {
    expect(phFactor(slope, 7)).toBe(1);
    expect(phFactor(slope, null)).toBe(1);
    expect(phFactor(null, 8)).toBe(1);
    expect(phFactor({ kind: 'direction', ...told, sources: ['S26'] }, 8)).toBe(1);
  });

  it('multiplies by the factor for each unit, and stops at the bounds', () => {
    expect(phFactor(slope, 8)).toBeCloseTo(2, 12);
    expect(phFactor(slope, 5)).toBeCloseTo(0.25, 12);
    expect(phFactor(slope, 9.5)).toBe(phFactor(slope, 8));
    expect(phFactor(slope, 4)).toBe(phFactor(slope, 5));
  });

  it('takes the step that holds the pH, its lower end included', () => {
    expect([5, 6.39, 6.4, 6.9, 7, 8].map((ph) => phFactor(steps, ph))).toEqual([2, 2, 1.4, 1.4, 0.66, 0.66]);
  });

  it.each([2.9, 11.1, Number.NaN])('refuses pH %d', (ph) => {
    expect(() => phFactor(slope, ph)).toThrow(/soilPh/);
  });

  it.each([
    ['chlorsulfuron', 36, 5.6, 13.3, 0.05],
    ['chlorsulfuron', 36, 7.5, 70, 0.05],
    ['prosulfuron', 28.3, 5.4, 6.5, 0.05],
    ['prosulfuron', 28.3, 7.9, 122.9, 0.05],
    ['triasulfuron', 39, 5.7, Math.sqrt(12 * 28), 0.05],
    ['triasulfuron', 39, 8.0, Math.sqrt(60 * 170), 0.05],
    ['flumetsulam', 30, 7.5, Math.sqrt(14 * 28), 0.05],
    ['flumetsulam', 30, 6.6, Math.sqrt(30 * 60), 0.05],
    ['flumetsulam', 30, 6.1, Math.sqrt(30 * 120), 0.05],
  ])(
    'brings the typical half-life of %s (%d d) at pH %d to the published %d d',
    (name, typical, ph, published, share) => {
      const active = catalogue.actives.find(({ isoName }) => isoName === name);
      expect(active?.fieldHalfLifeDays?.typical).toBe(typical);
      // The committed slopes and steps have two or three digits: within 5 % of the published half-life.
      expect(Math.abs(typical * phFactor(responseOf(name), ph) - published) / published).toBeLessThan(share);
    },
  );
});
