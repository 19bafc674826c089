import { assertWithin } from '../../errors.ts';

/** Grams per hectare and centimetre of depth that make 1 mg/kg at a bulk density of 1 g/cm3. */
const GRAMS_PER_HA_CM = 100;

/**
 * Concentration of a dose mixed evenly into a layer of soil. [mg/kg]
 *
 * Equation   c = A·(1 − F)/(100·z·ρ)
 * Symbols    A = doseGramsPerHa [g/ha], >= 0; F = interceptedFraction, kept by leaves [0-1]
 *            z = depthCm of the layer [cm], 0.1 to 200; ρ = bulkDensity, dry [g/cm3], 0.1 to 2.65
 * Valid      no loss, even mixing; outside the ranges -> OutOfRangeError
 * Source     mass balance
 * Checked    test/published/soil-concentration.json (C-PEC-1 to C-PEC-3)
 * @example   soilConcentration(750, 5, 1.5) // 1
 */
export function soilConcentration(
  doseGramsPerHa: number,
  depthCm: number,
  bulkDensity: number,
  interceptedFraction = 0,
): number {
  assertWithin('dose', doseGramsPerHa, 0, Number.MAX_VALUE);
  assertWithin('depth', depthCm, 0.1, 200);
  assertWithin('bulk density', bulkDensity, 0.1, 2.65);
  assertWithin('intercepted fraction', interceptedFraction, 0, 1);
  return (doseGramsPerHa * (1 - interceptedFraction)) / (GRAMS_PER_HA_CM * depthCm * bulkDensity);
}
