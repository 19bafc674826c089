import { assertWithin } from '../../errors.ts';

/**
 * Water that the top layer can lose to evaporation, from field capacity to air-dry. [mm]
 *
 * Equation   TEW = 1000 (θ_FC − 0.5 θ_WP) Z_e
 * Symbols    thetaFieldCapacity = θ_FC, water at 33 kPa [m3 m-3], 0 to 1
 *            thetaWiltingPoint = θ_WP, water at 1500 kPa [m3 m-3], 0 to θ_FC
 *            layerDepthM = Z_e, depth of the evaporation layer [m], 0.05 to 0.30 (the source: 0.10 to 0.15)
 * Valid      bare or thinly covered soil; outside the ranges -> OutOfRangeError
 * Source     FAO-56 eq. 73
 * Checked    test/published/evaporation.json
 * @example   totalEvaporableWater(0.23, 0.10, 0.10) // 18
 */
export function totalEvaporableWater(
  thetaFieldCapacity: number,
  thetaWiltingPoint: number,
  layerDepthM: number,
): number {
  assertWithin('thetaFieldCapacity', thetaFieldCapacity, 0, 1);
  assertWithin('thetaWiltingPoint', thetaWiltingPoint, 0, thetaFieldCapacity);
  assertWithin('layerDepthM', layerDepthM, 0.05, 0.3);
  return 1000 * (thetaFieldCapacity - 0.5 * thetaWiltingPoint) * layerDepthM;
}
