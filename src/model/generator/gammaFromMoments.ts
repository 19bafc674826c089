import { OutOfRangeError } from '../../errors.ts';

/** Parameters of the gamma distribution of rain on a wet day: mean shape·scale, variance shape·scale². */
export interface GammaParameters {
  /** α, shape. [–] */
  shape: number;
  /** β, scale. [mm] */
  scaleMm: number;
}

/**
 * Gamma distribution with a given mean and standard deviation of rain on a wet day. [–, mm]
 *
 * Equation   α = (mean/sd)²; β = sd²/mean
 * Symbols    meanMm = mean rain of a wet day [mm], above 0; sdMm = its standard deviation [mm], above 0
 * Valid      amounts above the wet-day threshold; outside the ranges -> OutOfRangeError
 * Source     method of moments
 * Checked    test/published/generator.json
 * @example   gammaFromMoments(2.54, 3.048) // { shape: 0.694, scaleMm: 3.66 }
 */
export function gammaFromMoments(meanMm: number, sdMm: number): GammaParameters {
  if (!(meanMm > 0)) throw new OutOfRangeError('meanMm', meanMm, 'above 0');
  if (!(sdMm > 0)) throw new OutOfRangeError('sdMm', sdMm, 'above 0');
  return { shape: (meanMm / sdMm) ** 2, scaleMm: (sdMm * sdMm) / meanMm };
}

/**
 * Gamma distribution of rain on a wet day from its mean alone. [–, mm]
 *
 * Equation   β = −2.16 + 1.83 p̄ from p̄ = 3 mm up, below that β = 1.11 p̄; α = p̄/β
 * Symbols    meanMm = p̄, mean rain of a wet day [mm], above 0 to 200
 * Valid      an average over many climates; the two branches meet at 3 mm; outside -> OutOfRangeError
 * Source     Agricultural and Forest Meteorology 36, 363-376 (1986); the branch below 3 mm from one public coding
 * Checked    test/published/generator.json
 * @example   gammaFromWetDayMean(6) // { shape: 0.6803, scaleMm: 8.82 }
 */
export function gammaFromWetDayMean(meanMm: number): GammaParameters {
  if (!(meanMm > 0 && meanMm <= 200)) throw new OutOfRangeError('meanMm', meanMm, 'above 0 and at most 200');
  const scaleMm = meanMm < 3 ? 1.11 * meanMm : -2.16 + 1.83 * meanMm;
  return { shape: meanMm / scaleMm, scaleMm };
}
