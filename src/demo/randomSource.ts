import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { OutOfRangeError } from '../errors.ts';

/** A stream of random numbers that its seed fixes to the last bit. */
export interface RandomSource {
  /** Uniform on 0 (included) to 1 (excluded). [-] */
  uniform(): number;
  /** Standard normal: mean 0, variance 1. [-] */
  normal(): number;
  /** Gamma with mean shape·scale and variance shape·scale², both parameters above 0. [unit of scale] */
  gamma(shape: number, scale: number): number;
}

/** First draws of the generator still show the seed; this many are thrown away. */
const WARM_UP_DRAWS = 64;

/**
 * Uniform, normal and gamma variates from one seeded generator.
 *
 * Equation   normal: polar rejection method; gamma with shape a ≥ 1: d v, d = a − 1/3,
 *            v = (1 + x/√(9d))³, x normal, kept if ln u < x²/2 + d − d v + d ln v;
 *            shape a < 1: a variate of shape a + 1 times u^(1/a)
 * Symbols    seed = any integer of 32 bits
 * Valid      shape and scale above 0, else OutOfRangeError
 * Source     xoroshiro128+ of pure-rand; Marsaglia-Tsang method, ACM Transactions on Mathematical
 *            Software 26(3), 363-372 (2000) [from memory; the tests check mean, variance and skewness]
 * Checked    test/demo/randomSource.test.ts
 * @example   createRandomSource(1).uniform() // 0.741323
 */
export function createRandomSource(seed: number): RandomSource {
  const generator = xoroshiro128plus(seed);
  for (let draw = 0; draw < WARM_UP_DRAWS; draw++) generator.next();

  // 32 random bits are plenty for weather and cost half of what 53 would.
  const uniform = () => (generator.next() >>> 0) * 2 ** -32;

  // The polar method yields normals in pairs; the second waits here.
  let spare = Number.NaN;

  function normal(): number {
    if (!Number.isNaN(spare)) {
      const waiting = spare;
      spare = Number.NaN;
      return waiting;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square <= 0 || square >= 1) continue;
      const stretch = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * stretch;
      return x * stretch;
    }
  }

  function gammaFromOneUp(shape: number): number {
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const root = 1 + c * x;
      if (root <= 0) continue;
      const v = root * root * root;
      if (Math.log(1 - uniform()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
    }
  }

  function gamma(shape: number, scale: number): number {
    if (!(shape > 0)) throw new OutOfRangeError('shape', shape, 'above 0');
    if (!(scale > 0)) throw new OutOfRangeError('scale', scale, 'above 0');
    if (shape >= 1) return scale * gammaFromOneUp(shape);
    return scale * gammaFromOneUp(shape + 1) * (1 - uniform()) ** (1 / shape);
  }

  return { uniform, normal, gamma };
}
