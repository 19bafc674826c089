import { assertWithin } from '../../errors.ts';

/**
 * Solar energy that reaches the ground on a cloudless day. [MJ m-2 d-1]
 *
 * Equation   Rso = (0.75 + 2·10⁻⁵ z) Ra
 * Symbols    extraterrestrialMj = Ra, radiation above the atmosphere [MJ m-2 d-1], 0 to 50
 *            elevationM = z, height above sea level [m], −450 to 6000
 * Valid      where no calibrated Angström values exist; outside the ranges -> OutOfRangeError
 * Source     FAO-56 eq. 37, equation number from memory; a published example confirms the figure
 * Checked    test/published/radiation.json
 * @example   clearSkyRadiation(41.08838, 100) // 30.8985
 */
export function clearSkyRadiation(extraterrestrialMj: number, elevationM: number): number {
  assertWithin('extraterrestrialMj', extraterrestrialMj, 0, 50);
  assertWithin('elevationM', elevationM, -450, 6000);
  return (0.75 + 2e-5 * elevationM) * extraterrestrialMj;
}
