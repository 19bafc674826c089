import { evaporationReduction } from './evaporationReduction.ts';
import type { TopsoilLayer } from './topsoilLayer.ts';

/**
 * Depletion of the evaporation layer after the day's water has come and before evaporation takes. [mm]
 *
 * Equation   D_s = max(0, D − w); the rest of the water, max(0, w − D), percolates
 * Symbols    D = depletionMm at the start of the day [mm], 0 … TEW; w = waterMm, rain + melt + irrigation [mm]
 * Valid      inner loop, inputs not checked
 * Source     FAO-56 eq. 77-79, water early in the day
 */
export const depletionAfterWater = (depletionMm: number, waterMm: number): number =>
  depletionMm > waterMm ? depletionMm - waterMm : 0;

/**
 * Evaporation of one day. [mm]
 *
 * Equation   E = min(TEW − D_s, k·K_r(D_s)·ET0)
 * Symbols    D_s = wettedDepletionMm [mm]; ET0 = et0Mm [mm/d];
 *            k = layer.wetEvaporationCoefficient = (1 − 0.5 c_m)(K_c,max − K_cb) [-]
 * Valid      inner loop, inputs not checked; 0 <= D_s <= TEW
 * Source     FAO-56 eq. 71, 74, 77
 * Checked    test/published/evaporation.json (C-EV-1, C-EV-2, through its parts)
 */
export function evaporationOfDay(wettedDepletionMm: number, et0Mm: number, layer: TopsoilLayer): number {
  const wanted =
    layer.wetEvaporationCoefficient *
    evaporationReduction(wettedDepletionMm, layer.tewMm, layer.rewMm) *
    et0Mm;
  return Math.min(layer.tewMm - wettedDepletionMm, wanted);
}
