import { powerOf } from '../breakdown/powerTable.ts';
import type { TopsoilLayer } from '../water/topsoilLayer.ts';
import { type BreakdownResponse, moistureScale } from './breakdownSums.ts';

/** Topsoil water and breakdown over a run of days. */
export interface SoilRun {
  /** Running sum of breakdown days; entry i holds the days before index i. Length days + 1. */
  readonly sums: Float64Array;
  /** Depletion of the evaporation layer at the end of each day [mm]. */
  readonly depletionMm: Float64Array;
}

/**
 * Water and breakdown of a run in one pass: {@link wetnessRun} and {@link breakdownSums} together, several times as
 * fast. What does not change from day to day is worked out before the loop; divisions become multiplications.
 *
 * Equation   D_s = max(0, D − w); E = min(TEW − D_s, k·K_r·ET0) with K_r·(TEW − REW) = TEW − D_s above REW;
 *            D' = D_s + E; r = 1 − (D_s + D')/(2 TEW); S(i + 1) = S(i) + f_T·f_W(r)
 * Symbols    as in the two functions it joins
 * Valid      inner loop, inputs not checked; columns of equal length
 * Checked    test/model/soilRun.test.ts (against the one-day equations)
 */
export function soilRun(
  waterMm: Float64Array,
  et0Mm: Float64Array,
  warmth: Float64Array,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  startDepletionMm: number,
): SoilRun {
  const days = waterMm.length;
  const sums = new Float64Array(days + 1);
  const depletionMm = new Float64Array(days);
  const { tewMm, rewMm, wetEvaporationCoefficient } = layer;
  const perDrying = tewMm > rewMm ? wetEvaporationCoefficient / (tewMm - rewMm) : 0;
  const perTwoTew = 1 / (2 * tewMm);
  const { table, base, slope } = moistureScale(layer, response);
  let depletion = startDepletionMm;
  let sum = 0;
  for (let i = 0; i < days; i++) {
    const wetted = depletion > waterMm[i] ? depletion - waterMm[i] : 0;
    const left = tewMm - wetted;
    const wanted = wetted <= rewMm ? wetEvaporationCoefficient * et0Mm[i] : perDrying * et0Mm[i] * left;
    // biome-ignore lint/complexity/useMathMinMax: costs a third more in this loop
    depletion = wetted + (wanted < left ? wanted : left);
    depletionMm[i] = depletion;
    if (warmth[i] > 0) {
      const wetness = 1 - (wetted + depletion) * perTwoTew;
      sum += warmth[i] * powerOf(table, base + slope * wetness);
    }
    sums[i + 1] = sum;
  }
  return { sums, depletionMm };
}
