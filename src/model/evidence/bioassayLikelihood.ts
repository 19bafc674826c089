import { assertWithin } from '../../errors.ts';
import { normalCdf } from '../odds/normalCdf.ts';

/** How far a field bioassay can be trusted. */
export interface BioassayTrust {
  /** Share of harmful soils in which the plants are injured [0-1]. */
  readonly sensitivity: number;
  /** Share of harmless soils in which they stay clean [0-1]. */
  readonly specificity: number;
  /** Spread of the reading about the harmful level, in the logarithm of residue [-], > 0. */
  readonly spread: number;
}

/**
 * Probability that a field bioassay shows injury in one soil. [0-1]
 *
 * Equation   P = (1 − specificity) + (sensitivity + specificity − 1)·Φ(ln X/spread)
 * Symbols    ln X = logIndex, residue over what just harms the crop [-]; see {@link BioassayTrust}
 * Valid      sensitivity and specificity 0.5 to 1, spread 0.01 to 5
 * Source     assumption of our own: both 0.9, spread 0.35, which gives 0.1 + 0.8·Φ(ln X/0.35)
 * Checked    test/model/evidence.test.ts
 */
export function injuryProbability(
  logIndex: number,
  { sensitivity, specificity, spread }: BioassayTrust,
): number {
  assertWithin('sensitivity', sensitivity, 0.5, 1);
  assertWithin('specificity', specificity, 0.5, 1);
  assertWithin('spread', spread, 0.01, 5);
  return 1 - specificity + (sensitivity + specificity - 1) * normalCdf(logIndex / spread);
}
