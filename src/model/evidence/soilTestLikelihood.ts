import { assertWithin } from '../../errors.ts';

/**
 * Logarithm of the likelihood of a measured residue, up to a constant. [-]
 *
 * Equation   −(ln r̂ − ln R)²/(2 ln(1 + cv²))
 * Symbols    r̂ = measuredFraction, residue found over the full dose [-], > 0; ln R = logResidue, what the model expects
 *            in one soil [-]; cv = coefficient of variation of sampling and laboratory [-], 0.01 to 3
 * Valid      error ln-normal about the expected residue (our assumption)
 * Source     ln-normal error with a given coefficient of variation
 * Checked    test/model/evidence.test.ts
 */
export function soilTestLogLikelihood(measuredFraction: number, logResidue: number, cv: number): number {
  assertWithin('measured fraction', measuredFraction, Number.MIN_VALUE, Number.MAX_VALUE);
  assertWithin('coefficient of variation', cv, 0.01, 3);
  const difference = Math.log(measuredFraction) - logResidue;
  return -(difference * difference) / (2 * Math.log(1 + cv * cv));
}
