import type { TopsoilLayer } from '../water/topsoilLayer.ts';
import { depletionAfterWater, evaporationOfDay } from '../water/topsoilWaterDay.ts';

/** Topsoil water over a run of days. */
export interface WetnessRun {
  /** Depletion of the evaporation layer at the end of each day [mm], 0 … TEW. */
  readonly depletionMm: Float64Array;
  /** Mean wetness of the layer over each day, r = (θ − θ_ad)/(θ_FC − θ_ad) [0-1]. */
  readonly wetness: Float64Array;
}

/**
 * Runs the topsoil water balance day by day.
 *
 * Equation   D_s = max(0, D − w); D' = D_s + E; r = 1 − (D_s + D')/(2 TEW)
 *            (the layer's mean water content θ = θ_FC − (D_s + D')/2/(1000 Z_e), made relative to air-dry 0.5 θ_WP)
 * Symbols    w = waterMm, rain + melt + irrigation of the day [mm]; E = evaporation of the day [mm]
 * Valid      inner loop, inputs not checked; 0 <= startDepletionMm <= TEW
 * Source     FAO-56 eq. 71-79
 * Checked    test/model/waterBalance.property.test.ts
 * @example wetnessRun(Float64Array.of(50, 0), Float64Array.of(5, 5), layer, 0).wetness // [0.94086, 0.82258]
 */
export function wetnessRun(
  waterMm: Float64Array,
  et0Mm: Float64Array,
  layer: TopsoilLayer,
  startDepletionMm: number,
): WetnessRun {
  const days = waterMm.length;
  const depletionMm = new Float64Array(days);
  const wetness = new Float64Array(days);
  let depletion = startDepletionMm;
  for (let i = 0; i < days; i++) {
    const wetted = depletionAfterWater(depletion, waterMm[i]);
    depletion = wetted + evaporationOfDay(wetted, et0Mm[i], layer);
    depletionMm[i] = depletion;
    wetness[i] = 1 - (wetted + depletion) / (2 * layer.tewMm);
  }
  return { depletionMm, wetness };
}

/** Depletion at which a record starts: half of the evaporable water. [mm] */
export const startDepletionOf = (layer: TopsoilLayer): number => layer.tewMm / 2;
