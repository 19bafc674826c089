import { type PowerTable, powerOf } from '../breakdown/powerTable.ts';
import type { TopsoilLayer } from '../water/topsoilLayer.ts';
import { type BreakdownResponse, moistureScale } from './breakdownSums.ts';
import { type Columns, newColumns } from './columns.ts';

/** Topsoil water and breakdown over a run of days. */
export interface SoilRun {
  /** Running sum of breakdown days; entry i holds the days before index i. Length days + 1. */
  readonly sums: Float64Array;
  /** Depletion of the evaporation layer at the end of each day [mm]. */
  readonly depletionMm: Float64Array;
}

/**
 * Water and breakdown of a run: {@link wetnessRun} and {@link breakdownSums}, several times as fast. What does not change
 * from day to day is worked out before the loops; divisions become multiplications. Water goes first and leaves each
 * day's wetness in the column of sums, which the second loop turns into sums: together the two take half the time of
 * one loop, in which each day's water would wait for the power of the day before.
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
  columns: Columns = newColumns,
): SoilRun {
  const days = waterMm.length;
  const depletionMm = columns.take(days);
  const sums = columns.take(days + 1);
  const { table, slope } = moistureScale(layer, response);
  runWater(waterMm, et0Mm, layer, startDepletionMm, slope, depletionMm, sums);
  sumBreakdown(warmth, table, sums);
  return { sums, depletionMm };
}

/** Fills in each day's depletion at its end, and one place later what the moisture factor is a power of. */
function runWater(
  waterMm: Float64Array,
  et0Mm: Float64Array,
  { tewMm, rewMm, wetEvaporationCoefficient }: TopsoilLayer,
  startDepletionMm: number,
  slope: number,
  depletionMm: Float64Array,
  powerBases: Float64Array,
): void {
  const perDrying = tewMm > rewMm ? wetEvaporationCoefficient / (tewMm - rewMm) : 0;
  const perDepletion = slope / (2 * tewMm);
  let depletion = startDepletionMm;
  for (let i = 0; i < depletionMm.length; i++) {
    const wetted = depletion > waterMm[i] ? depletion - waterMm[i] : 0;
    const left = tewMm - wetted;
    const wanted = wetted <= rewMm ? wetEvaporationCoefficient * et0Mm[i] : perDrying * et0Mm[i] * left;
    // biome-ignore lint/complexity/useMathMinMax: costs a third more in this loop
    depletion = wetted + (wanted < left ? wanted : left);
    depletionMm[i] = depletion;
    powerBases[i + 1] = 1 - (wetted + depletion) * perDepletion;
  }
}

/** Turns the bases, in their column, into running sums. */
function sumBreakdown(warmth: Float64Array, table: PowerTable, sums: Float64Array): void {
  let sum = 0;
  sums[0] = 0;
  for (let i = 0; i < warmth.length; i++) {
    if (warmth[i] > 0) sum += warmth[i] * powerOf(table, sums[i + 1]);
    sums[i + 1] = sum;
  }
}
