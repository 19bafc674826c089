import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import { soilPosterior } from '../../src/model/evidence/soilPosterior.ts';
import fc from '../fastCheck.ts';

describe('soilPosterior', () => {
  it('gives back the prior where nothing was found', () => {
    const { massBelow } = soilPosterior([]);
    for (const z of [-4, -1.2816, -0.3, 0, 0.0013, 1, 2.5]) {
      expect(Math.abs(massBelow(z) - normalCdf(z, 0, 1))).toBeLessThan(1e-5);
    }
  });

  it('meets the closed form of a normal prior and normal likelihoods', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            at: fc.double({ min: -2, max: 2, noNaN: true }),
            sd: fc.double({ min: 0.2, max: 3, noNaN: true }),
          }),
          { minLength: 1, maxLength: 4 },
        ),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (found, z) => {
          const precision = found.reduce((sum, { sd }) => sum + 1 / sd ** 2, 1);
          const mean = found.reduce((sum, { at, sd }) => sum + at / sd ** 2, 0) / precision;
          const { massBelow } = soilPosterior(
            found.map(
              ({ at, sd }) =>
                (soil: number) =>
                  -0.5 * ((soil - at) / sd) ** 2,
            ),
          );
          expect(Math.abs(massBelow(z) - normalCdf(z, mean, 1 / Math.sqrt(precision)))).toBeLessThan(2e-4);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('rises from 0 to 1', () => {
    const { massBelow } = soilPosterior([(z) => -Math.abs(z - 1)]);
    expect(massBelow(-6)).toBe(0);
    expect(massBelow(6)).toBe(1);
    let last = 0;
    for (let z = -5; z <= 5; z += 0.0137) {
      expect(massBelow(z)).toBeGreaterThanOrEqual(last);
      last = massBelow(z);
    }
  });
});
