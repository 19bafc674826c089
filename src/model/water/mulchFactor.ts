import { assertWithin } from '../../errors.ts';

/**
 * Factor on soil evaporation for ground covered by straw or dead weeds, 0.5 to 1. [–]
 *
 * Equation   m = 1 − 0.5 c
 * Symbols    coverFraction = c, share of the ground covered [–], 0 to 1
 * Valid      organic mulch; 5 % less evaporation for each tenth covered; outside 0 to 1 -> OutOfRangeError
 * Source     FAO-56, section on surface mulches
 * Checked    test/model/evaporation.property.test.ts (no published example)
 * @example   mulchFactor(0.6) // 0.7
 */
export function mulchFactor(coverFraction: number): number {
  assertWithin('coverFraction', coverFraction, 0, 1);
  return 1 - 0.5 * coverFraction;
}
