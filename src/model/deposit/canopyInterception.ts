import { assertWithin } from '../../errors.ts';

/**
 * Share of a spray that stays on green leaves, from the leaf area above the ground. [–]
 *
 * Equation   F = 1 − exp(−κ LAI)
 * Symbols    extinction = κ, extinction coefficient [–], 0 to 1.5, usually 0.3 to 0.7
 *            leafAreaIndex = LAI, leaf area over ground area [–], 0 to 12
 * Valid      leaves spread evenly; not for stubble or mulch; outside the ranges -> OutOfRangeError
 * Source     Beer-Lambert law; usual range of κ from memory
 * Checked    test/published/interception.json
 * @example   canopyInterceptionFromLai(0.5, 1) // 0.3935
 */
export function canopyInterceptionFromLai(extinction: number, leafAreaIndex: number): number {
  assertWithin('extinction', extinction, 0, 1.5);
  assertWithin('leafAreaIndex', leafAreaIndex, 0, 12);
  return 1 - Math.exp(-extinction * leafAreaIndex);
}
