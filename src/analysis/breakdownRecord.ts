import { type BreakdownResponse, responseKey, warmthFactors } from '../model/run/breakdownSums.ts';
import { type Columns, newColumns } from '../model/run/columns.ts';
import type { DailyForcing } from '../model/run/dailyForcing.ts';
import { labelWater } from '../model/run/labelWater.ts';
import { type SoilRun, soilRun } from '../model/run/soilRun.ts';
import { startDepletionOf } from '../model/run/wetnessRun.ts';
import { type TopsoilLayer, topsoilLayer } from '../model/water/topsoilLayer.ts';
import type { Assumptions } from '../schema/assumptions.ts';
import type { StationClimate } from './stationClimate.ts';
import { createSumsMemory } from './sumsMemory.ts';

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

/** Bytes of running sums remembered, of all stations together: some 270 runs over 60 years. */
const BUDGET_BYTES = 96e6;

/** One run over a whole record: of the field's soil under its own rain, or of the label's. */
interface RecordRun extends SoilRun {
  readonly bytes: number;
}

/** What follows from warmth alone, for one response. */
interface WarmthRun {
  readonly warmth: Float64Array;
  readonly warmthSums: Float64Array;
  readonly bytes: number;
}

const runs = createSumsMemory<RecordRun | WarmthRun>(BUDGET_BYTES, ({ bytes }) => bytes);

/**
 * Topsoil water and breakdown over a whole record, once with its rain on the field's soil and once with label-basis rain
 * on the reference soil (loam, 2 % organic matter), both at the record's own warmth.
 *
 * The runs are remembered one by one, so another soil shares the label's run and another date costs no run at all.
 * Columns have an entry a day of the record, running sums one more. [breakdown days; wetness 0-1]
 * @example breakdownRecord(climate, layer, response, assumptions).sums.length === climate.series.days + 1 // true
 */
export function breakdownRecord(
  climate: StationClimate,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  basis: LabelBasis,
): BreakdownRecord {
  const { forcing, series, columns } = climate;
  const responds = responseKey(response);
  const warm = runs.get(climate, `warmth ${response.q10} ${response.snowStopsMm}`, () =>
    warmthRun(forcing, response, columns),
  ) as WarmthRun;

  const { tewMm, rewMm, wetEvaporationCoefficient, thetaFieldCapacity, thetaWiltingPoint } = layer;
  const layerKey = `${tewMm} ${rewMm} ${wetEvaporationCoefficient} ${thetaFieldCapacity} ${thetaWiltingPoint}`;
  const real = runs.get(climate, `soil ${responds} ${layerKey}`, () =>
    recordRun(forcing.waterMm, forcing, warm, layer, response, columns),
  ) as RecordRun;

  const { labelRainMm, labelRainEveryDays, labelCoverFraction } = basis;
  const labelKey = `label ${responds} ${labelRainMm} ${labelRainEveryDays} ${labelCoverFraction}`;
  const label = runs.get(climate, labelKey, () => {
    const water = labelWater(series.firstDay, forcing.meanTempC, labelRainMm, labelRainEveryDays, columns);
    return recordRun(water, forcing, warm, referenceLayer(basis), response, columns);
  }) as RecordRun;

  return {
    sums: real.sums,
    labelSums: label.sums,
    warmthSums: warm.warmthSums,
    depletionMm: real.depletionMm,
    labelDepletionMm: label.depletionMm,
  };
}

/** Forgets the runs of a climate that nobody will ask for again: so many stations need not wait for their turn to go. */
export const forgetRuns = (climate: StationClimate): void => runs.forget(climate);

function recordRun(
  waterMm: Float64Array,
  { et0Mm }: DailyForcing,
  { warmth }: WarmthRun,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  columns?: Columns,
): RecordRun {
  const run = soilRun(waterMm, et0Mm, warmth, layer, response, startDepletionOf(layer), columns);
  return { ...run, bytes: run.sums.byteLength + run.depletionMm.byteLength };
}

function warmthRun(
  { soilTempC, snowMm }: DailyForcing,
  response: BreakdownResponse,
  columns: Columns = newColumns,
): WarmthRun {
  const warmth = warmthFactors(soilTempC, snowMm, response, columns);
  const warmthSums = columns.take(warmth.length + 1);
  warmthSums[0] = 0;
  for (let i = 0; i < warmth.length; i++) warmthSums[i + 1] = warmthSums[i] + warmth[i];
  return { warmth, warmthSums, bytes: warmth.byteLength + warmthSums.byteLength };
}
