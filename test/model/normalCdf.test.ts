import libraryCdf from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../src/model/odds/normalCdf.ts';
import fc from '../fastCheck.ts';

const anyZ = fc.double({ min: -40, max: 40, noNaN: true });

describe('the distribution function of the standard normal', () => {
  it('is the library’s, to 5e-16 and in the lower tail to 1e-8 of itself', () => {
    fc.assert(
      fc.property(anyZ, (z) => {
        const known = libraryCdf(z, 0, 1);
        expect(Math.abs(normalCdf(z) - known)).toBeLessThanOrEqual(5e-16);
        if (z < 0 && known > 1e-300) {
          expect(Math.abs(normalCdf(z) / known - 1)).toBeLessThanOrEqual(1e-8);
        }
      }),
      { numRuns: 2000, examples: [[0], [-7.0710678118], [-7.0710678119], [7.0710678119], [-37], [1.96]] },
    );
  });

  it('never falls', () => {
    fc.assert(
      fc.property(anyZ, fc.double({ min: 1e-6, max: 1, noNaN: true }), (z, step) => {
        expect(normalCdf(z + step)).toBeGreaterThanOrEqual(normalCdf(z) - 5e-16);
      }),
      { numRuns: 1000 },
    );
  });

  it('ends at 0 and 1', () => {
    expect([Number.NEGATIVE_INFINITY, 0, Number.POSITIVE_INFINITY].map(normalCdf)).toEqual([0, 0.5, 1]);
    expect(normalCdf(Number.NaN)).toBeNaN();
  });
});
