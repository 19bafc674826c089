import { type BreakdownResponse, breakdownSums, warmthFactors } from '../model/run/breakdownSums.ts';
import { groundForcing, SOIL_TEMPERATURE_DAYS } from '../model/run/dailyForcing.ts';
import { startDepletionOf, wetnessRun } from '../model/run/wetnessRun.ts';
import type { TopsoilLayer } from '../model/water/topsoilLayer.ts';
import { RAIN_FILLED } from '../schema/codes.ts';
import type { BreakdownRecord } from './breakdownRecord.ts';
import type { HistoricalYear } from './historicalYears.ts';
import type { StationClimate } from './stationClimate.ts';

/** One course the season may take: observed weather where there is some, a past year's from there on. */
export interface Trace {
  readonly year: number;
  /** Last offset from the first application that the trace reaches [d]. */
  readonly lastOffset: number;
  /** Breakdown days before offset d, counted from the first application: `sums[base + d] - sums[base]`. */
  readonly sums: Float64Array;
  readonly base: number;
  /** Rain that falls as rain from the first application on [mm]; index 0 is that day. */
  readonly liquidRainMm: Float64Array;
}

/** What decides the traces of a question beside the years. */
export interface TraceOptions {
  /** Index of the first application in the record; may lie outside it while planning. */
  readonly start: number;
  /** Days from the first application that are observed, the as-of day included; 0 while planning. */
  readonly observedDays: number;
  /** Factor on the rain of days not observed. */
  readonly restOfSeasonRain: number;
  /** Days to follow from the first application on [d]. */
  readonly horizonDays: number;
  readonly meltMmPerDegreeDay: number;
}

/** One trace for each historical year. */
export function seasonTraces(
  climate: StationClimate,
  record: BreakdownRecord,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  years: readonly HistoricalYear[],
  options: TraceOptions,
): Trace[] {
  const plain = options.observedDays === 0 && options.restOfSeasonRain === 1;
  return years.map((year) =>
    plain
      ? recordTrace(climate, record, year, options.horizonDays)
      : joinedTrace(climate, record, layer, response, year, options),
  );
}

/** A year's own weather throughout: a view of the record's sums. */
function recordTrace(
  { series, forcing }: StationClimate,
  record: BreakdownRecord,
  { year, start }: HistoricalYear,
  horizonDays: number,
): Trace {
  const lastOffset = Math.min(horizonDays, series.days - start);
  return {
    year,
    lastOffset,
    sums: record.sums,
    base: start,
    liquidRainMm: forcing.liquidRainMm.subarray(start, start + lastOffset),
  };
}

/**
 * Observed days, then the year's own. The water state at the start is the record's own at that date while
 * the season is under way, the year's while planning; the soil's running mean temperature averages the
 * joined series.
 */
function joinedTrace(
  { series, forcing }: StationClimate,
  record: BreakdownRecord,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  { year, start }: HistoricalYear,
  options: TraceOptions,
): Trace {
  const days = Math.min(options.horizonDays, series.days - start);
  const origin = options.observedDays > 0 ? options.start : start;
  const lead = Math.min(SOIL_TEMPERATURE_DAYS - 1, origin);
  const rainMm = new Float64Array(days);
  const et0Mm = new Float64Array(days);
  const meanTempC = new Float64Array(lead + days);
  meanTempC.set(forcing.meanTempC.subarray(origin - lead, origin));
  for (let offset = 0; offset < days; offset++) {
    const real = options.start + offset;
    const observed = offset < options.observedDays && series.rainOrigin[real] !== RAIN_FILLED;
    const index = observed ? real : start + offset;
    rainMm[offset] = series.rainMm[index] * (observed ? 1 : options.restOfSeasonRain);
    et0Mm[offset] = forcing.et0Mm[index];
    meanTempC[lead + offset] = forcing.meanTempC[index];
  }
  const before = origin - 1;
  const snowMm = before >= 0 ? forcing.snowMm[before] : 0;
  const depletionMm = before >= 0 ? record.depletionMm[before] : startDepletionOf(layer);
  const ground = groundForcing(rainMm, meanTempC, lead, snowMm, options.meltMmPerDegreeDay);
  const { wetness } = wetnessRun(ground.waterMm, et0Mm, layer, depletionMm);
  const warmth = warmthFactors(ground.soilTempC, ground.snowMm, response);
  return {
    year,
    lastOffset: days,
    sums: breakdownSums(warmth, wetness, layer, response),
    base: 0,
    liquidRainMm: ground.liquidRainMm,
  };
}
