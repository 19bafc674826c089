import type { ResiduePart } from '../odds/carryoverProbability.ts';

/**
 * Logarithm of what parts of a dose have become in one soil: ln R, or ln X where the parts are measured against the
 * harmless dose. [-]
 *
 * Equation   ln Σ exp(a − e^(σ z)·b)
 * Symbols    a = logExcess, logarithm of each part's dose [-]; b = decayExponent, its decay in the median soil [-];
 *            z = how fast the soil is, standard normal [-]; σ = soilSpread [-], > 0
 * Valid      at least one part; without any it is −Infinity
 * Source     first-order decay
 * Checked    test/model/evidence.test.ts
 */
export function logResidue(parts: readonly ResiduePart[], soilSpread: number, z: number): number {
  const speed = Math.exp(soilSpread * z);
  let top = Number.NEGATIVE_INFINITY;
  for (const { logExcess, decayExponent } of parts) top = Math.max(top, logExcess - speed * decayExponent);
  if (parts.length < 2) return top;
  let sum = 0;
  for (const { logExcess, decayExponent } of parts) sum += Math.exp(logExcess - speed * decayExponent - top);
  return top + Math.log(sum);
}
