import { describe, expect, it } from 'vitest';
import { createRandomSource } from '../../src/demo/randomSource.ts';
import { OutOfRangeError } from '../../src/errors.ts';

const DRAWS = 200_000;

function moments(draw: () => number): { mean: number; variance: number; skewness: number } {
  const values = Float64Array.from({ length: DRAWS }, draw);
  const mean = values.reduce((sum, value) => sum + value, 0) / DRAWS;
  const central = (power: number) => values.reduce((sum, value) => sum + (value - mean) ** power, 0) / DRAWS;
  const variance = central(2);
  return { mean, variance, skewness: central(3) / variance ** 1.5 };
}

/** Four standard errors of a sample mean. */
const band = (sd: number) => (4 * sd) / Math.sqrt(DRAWS);

describe('createRandomSource', () => {
  it('gives the same stream for the same seed and another for another', () => {
    const draw = (seed: number) => {
      const random = createRandomSource(seed);
      return [random.uniform(), random.normal(), random.normal(), random.gamma(0.7, 3), random.gamma(2, 1)];
    };
    expect(draw(5)).toEqual(draw(5));
    expect(draw(5)).not.toEqual(draw(6));
  });

  it('draws uniforms from 0 up to, not including, 1', () => {
    const random = createRandomSource(11);
    let low = 1;
    let high = 0;
    const { mean, variance } = moments(() => {
      const u = random.uniform();
      low = Math.min(low, u);
      high = Math.max(high, u);
      return u;
    });
    expect(low).toBeGreaterThanOrEqual(0);
    expect(high).toBeLessThan(1);
    expect(Math.abs(mean - 0.5)).toBeLessThan(band(Math.sqrt(1 / 12)));
    // The squared deviation of a uniform has variance 1/180.
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(band(Math.sqrt(1 / 180)));
  });

  it('draws normals with mean 0, variance 1 and no memory', () => {
    const random = createRandomSource(12);
    let previous = random.normal();
    let product = 0;
    const { mean, variance, skewness } = moments(() => {
      const x = random.normal();
      product += x * previous;
      previous = x;
      return x;
    });
    expect(Math.abs(mean)).toBeLessThan(band(1));
    expect(Math.abs(variance - 1)).toBeLessThan(band(Math.SQRT2));
    expect(Math.abs(skewness)).toBeLessThan(band(Math.sqrt(6)));
    expect(Math.abs(product / DRAWS)).toBeLessThan(band(1));
  });

  it.each([
    [0.3, 2],
    [0.694, 3.66],
    [1, 5],
    [4.5, 0.5],
  ])('draws gammas of shape %f and scale %f with their mean, variance and skewness', (shape, scale) => {
    const random = createRandomSource(13);
    const { mean, variance, skewness } = moments(() => random.gamma(shape, scale));
    expect(Math.abs(mean - shape * scale)).toBeLessThan(band(Math.sqrt(shape) * scale));
    // A gamma's fourth central moment is 3a(a + 2)b⁴, which gives the standard error of its variance.
    const varianceSd = Math.sqrt(3 * shape * (shape + 2) - shape ** 2) * scale ** 2;
    expect(Math.abs(variance - shape * scale ** 2)).toBeLessThan(band(varianceSd));
    // The skewness of so skewed a sample has no simple standard error; 5 % of 2/√a is about three of them.
    expect(Math.abs(skewness / (2 / Math.sqrt(shape)) - 1)).toBeLessThan(0.05);
  });

  it('refuses parameters at or below 0', () => {
    const random = createRandomSource(1);
    expect(() => random.gamma(0, 1)).toThrow(OutOfRangeError);
    expect(() => random.gamma(1, -2)).toThrow(OutOfRangeError);
    expect(() => random.gamma(Number.NaN, 1)).toThrow(OutOfRangeError);
  });
});
