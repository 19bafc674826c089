import { type BreakdownResponse, breakdownSums, warmthFactors } from '../model/run/breakdownSums.ts';
import { labelWater } from '../model/run/labelWater.ts';
import { startDepletionOf, wetnessRun } from '../model/run/wetnessRun.ts';
import { type TopsoilLayer, topsoilLayer } from '../model/water/topsoilLayer.ts';
import type { Assumptions } from '../schema/assumptions.ts';
import type { StationClimate } from './stationClimate.ts';

/** Organic matter of the reference soil of the label run. [% by mass] */
const REFERENCE_ORGANIC_MATTER = 2;

/** The soil of the label run: loam, 2 % organic matter, under the label's cover. */
export const referenceLayer = ({
  labelCoverFraction,
}: Pick<Assumptions, 'labelCoverFraction'>): TopsoilLayer =>
  topsoilLayer({ textureClass: 'loam' }, REFERENCE_ORGANIC_MATTER, labelCoverFraction);

/** Breakdown over a station's whole record, for one soil and one active's response. */
export interface BreakdownRecord {
  /** Running sum of the real run's breakdown days, length days + 1. */
  readonly sums: Float64Array;
  /** Running sum of the label run's breakdown days, length days + 1. */
  readonly labelSums: Float64Array;
  /** Running sum of the warmth factor alone, length days + 1: what moist soil would give. */
  readonly warmthSums: Float64Array;
  /** Depletion of the real run at the end of each day [mm]. */
  readonly depletionMm: Float64Array;
  /** Depletion of the label run at the end of each day [mm]. */
  readonly labelDepletionMm: Float64Array;
}

/** What {@link breakdownRecord} takes of the assumptions. */
export type LabelBasis = Pick<Assumptions, 'labelRainMm' | 'labelRainEveryDays' | 'labelCoverFraction'>;

/** Records remembered for each climate; one of 130 years takes 1.9 MB. */
const REMEMBERED = 8;

const remembered = new WeakMap<StationClimate, Map<string, BreakdownRecord>>();

/** {@link runRecord}, remembering the last few results of each climate: another date or crop costs no new run. */
export function breakdownRecord(
  climate: StationClimate,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  basis: LabelBasis,
): BreakdownRecord {
  const { labelRainMm, labelRainEveryDays, labelCoverFraction } = basis;
  const key = JSON.stringify([layer, response, labelRainMm, labelRainEveryDays, labelCoverFraction]);
  const records = remembered.get(climate) ?? new Map<string, BreakdownRecord>();
  remembered.set(climate, records);
  const record = records.get(key) ?? runRecord(climate, layer, response, basis);
  records.delete(key);
  records.set(key, record);
  const oldest = records.keys().next().value;
  if (records.size > REMEMBERED && oldest !== undefined) records.delete(oldest);
  return record;
}

/**
 * Runs topsoil water and breakdown over a whole record, once with its rain on the field's soil and once
 * with label-basis rain on the reference soil (loam, 2 % organic matter), both at the record's own warmth.
 */
function runRecord(
  { series, forcing }: StationClimate,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  basis: LabelBasis,
): BreakdownRecord {
  const warmth = warmthFactors(forcing.soilTempC, forcing.snowMm, response);
  const real = wetnessRun(forcing.waterMm, forcing.et0Mm, layer, startDepletionOf(layer));
  const reference = referenceLayer(basis);
  const water = labelWater(series.firstDay, forcing.meanTempC, basis.labelRainMm, basis.labelRainEveryDays);
  const label = wetnessRun(water, forcing.et0Mm, reference, startDepletionOf(reference));
  return {
    sums: breakdownSums(warmth, real.wetness, layer, response),
    labelSums: breakdownSums(warmth, label.wetness, reference, response),
    warmthSums: runningSum(warmth),
    depletionMm: real.depletionMm,
    labelDepletionMm: label.depletionMm,
  };
}

function runningSum(values: Float64Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) sums[i + 1] = sums[i] + values[i];
  return sums;
}
