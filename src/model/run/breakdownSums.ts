import { type PowerTable, powerOf, powerTable } from '../breakdown/powerTable.ts';
import { warmthOf, warmthTable } from '../breakdown/warmthTable.ts';
import type { TopsoilLayer } from '../water/topsoilLayer.ts';
import { type Columns, newColumns } from './columns.ts';

/** How breakdown of one active answers warmth and wetness. */
export interface BreakdownResponse {
  /** Speed-up per 10 °C [-]. */
  readonly q10: number;
  /** Form of the moisture response; 'walker' is offered for comparison. */
  readonly moisture: 'dryness' | 'walker';
  /** Exponent of the moisture response [-]. */
  readonly moistureExponent: number;
  /** Snow water above which breakdown stands still [mm]. */
  readonly snowStopsMm: number;
}

/** What tells one response from another: all of it, in one text. */
export const responseKey = ({ q10, moisture, moistureExponent, snowStopsMm }: BreakdownResponse): string =>
  `${q10} ${moisture} ${moistureExponent} ${snowStopsMm}`;

/**
 * Temperature factor of each day; 0 on frozen ground or under snow. [0 … , 1 at 20 °C]
 *
 * Equation   f_T = 0 if T_s <= 0 or S_w > snowStopsMm, else Q10^((T_s − 20)/10)
 * Source     Q10 default 2.58: EFSA Journal 2007
 * Checked    test/published/temperature-response.json (C-T)
 */
export function warmthFactors(
  soilTempC: Float64Array,
  snowMm: Float64Array,
  response: BreakdownResponse,
  columns: Columns = newColumns,
): Float64Array {
  const factors = columns.take(soilTempC.length);
  const table = warmthTable(response.q10);
  const { snowStopsMm } = response;
  for (let i = 0; i < factors.length; i++) {
    factors[i] = snowMm[i] <= snowStopsMm ? warmthOf(table, soilTempC[i]) : 0;
  }
  return factors;
}

/**
 * Running sum of breakdown days: entry i holds the sum of the days before index i, so that the
 * breakdown days from i to j are a difference of two entries. [breakdown days], length n + 1
 *
 * Equation   S(i) = Σ_{k<i} f_T(k)·f_W(k)
 * Valid      inner loop, inputs not checked
 * Source     definition; f_T and f_W are temperatureResponse and moistureResponse
 * @example breakdownSums(Float64Array.of(1, 1), Float64Array.of(1, 0.25), layer, response) // [0, 1, 1.5]
 */
export function breakdownSums(
  warmth: Float64Array,
  wetness: Float64Array,
  layer: TopsoilLayer,
  response: BreakdownResponse,
): Float64Array {
  const sums = new Float64Array(warmth.length + 1);
  const { table, base, slope } = moistureScale(layer, response);
  let sum = 0;
  for (let i = 0; i < warmth.length; i++) {
    if (warmth[i] > 0) sum += warmth[i] * powerOf(table, base + slope * wetness[i]);
    sums[i + 1] = sum;
  }
  return sums;
}

/**
 * The moisture factor as a power of a straight line in wetness r: of r itself, or of θ/θ_FC for the Walker form.
 */
export function moistureScale(
  { thetaFieldCapacity, thetaWiltingPoint }: TopsoilLayer,
  { moisture, moistureExponent }: BreakdownResponse,
): { table: PowerTable; base: number; slope: number } {
  const table = powerTable(moistureExponent);
  if (moisture === 'dryness') return { table, base: 0, slope: 1 };
  const base = (0.5 * thetaWiltingPoint) / thetaFieldCapacity;
  return { table, base, slope: 1 - base };
}
