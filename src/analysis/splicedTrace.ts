import { type BreakdownResponse, warmthFactors } from '../model/run/breakdownSums.ts';
import { groundForcing, SOIL_TEMPERATURE_DAYS } from '../model/run/dailyForcing.ts';
import { liquidRain } from '../model/run/liquidRain.ts';
import { soilRun } from '../model/run/soilRun.ts';
import { startDepletionOf } from '../model/run/wetnessRun.ts';
import type { TopsoilLayer } from '../model/water/topsoilLayer.ts';
import { RAIN_FILLED } from '../schema/codes.ts';
import type { BreakdownRecord } from './breakdownRecord.ts';
import type { HistoricalYear } from './historicalYears.ts';
import type { StationClimate } from './stationClimate.ts';
import type { Trace, TraceOptions } from './traces.ts';

/** Days run past the last observed one before the first look whether the two courses have met. [d] */
const FIRST_LOOK_DAYS = 48;

/**
 * Observed days, then a year's own, out of runs over the record that are there already.
 *
 * Up to the first gap in the observed rain the days are the record's own. From there, or from the first day to come, the
 * joined weather is run with the water, snow and soil warmth that the season left, only until it meets the year's own
 * course: after a rain that fills the layer in both, and ten days for the soil's mean temperature, every later day is
 * that of the record. Where no such rain comes, the whole course is run.
 *
 * Valid      no irrigation, rest of season at its own rain, application inside the record
 * Checked    test/analysis/splicedTrace.test.ts (against the course run day by day)
 */
export function splicedTrace(
  { series, forcing }: StationClimate,
  record: BreakdownRecord,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  { year, start }: HistoricalYear,
  options: TraceOptions,
  labelRun: Trace['labelRun'],
): Trace {
  const { start: origin } = options;
  const days = Math.min(options.horizonDays, series.days - start);
  const observed = Math.min(options.observedDays, days);
  const gap = series.rainOrigin.subarray(origin, origin + observed).indexOf(RAIN_FILLED);
  const from = gap < 0 ? observed : gap;
  const sums = new Float64Array(days + 1);
  for (let offset = 1; offset <= from; offset++) {
    sums[offset] = record.sums[origin + offset] - record.sums[origin];
  }
  if (from < days) {
    const met = transition(Math.min(days, observed + FIRST_LOOK_DAYS));
    const shift = sums[met] - record.sums[start + met];
    for (let offset = met + 1; offset <= days; offset++) sums[offset] = record.sums[start + offset] + shift;
  }
  return {
    year,
    lastOffset: days,
    sums,
    base: 0,
    labelRun,
    liquidRainMm(firstOffset, endOffset) {
      const end = Math.min(endOffset, days);
      return liquidRain(joined(series.rainMm, firstOffset, end), joined(forcing.meanTempC, firstOffset, end));
    },
  };

  /** A column of the joined weather: the season's own on observed days that are no gap, else the year's. */
  function joined(column: Float64Array, first: number, end: number): Float64Array {
    const values = column.slice(start + first, start + end);
    for (let offset = first; offset < Math.min(observed, end); offset++) {
      const real = origin + offset;
      if (series.rainOrigin[real] !== RAIN_FILLED) values[offset - first] = column[real];
    }
    return values;
  }

  /** Runs the joined weather from the season's state on, fills the sums, and returns the day on which they have met. */
  function transition(to: number): number {
    const last = origin + from - 1;
    const lead = Math.min(SOIL_TEMPERATURE_DAYS - 1, last + 1);
    const length = to - from;
    const meanTempC = new Float64Array(lead + length);
    meanTempC.set(forcing.meanTempC.subarray(last + 1 - lead, last + 1));
    meanTempC.set(joined(forcing.meanTempC, from, to), lead);
    const snowMm = last < 0 ? 0 : forcing.snowMm[last];
    const rainMm = joined(series.rainMm, from, to);
    const ground = groundForcing(rainMm, meanTempC, lead, snowMm, options.meltMmPerDegreeDay);
    const warmth = warmthFactors(ground.soilTempC, ground.snowMm, response);
    const depletionMm = last < 0 ? startDepletionOf(layer) : record.depletionMm[last];
    const run = soilRun(
      ground.waterMm,
      joined(forcing.et0Mm, from, to),
      warmth,
      layer,
      response,
      depletionMm,
    );
    const before = sums[from];
    for (let day = 1; day <= length; day++) sums[from + day] = before + run.sums[day];
    for (let day = observed - from + SOIL_TEMPERATURE_DAYS - 1; day < length; day++) {
      const index = start + from + day;
      if (
        run.depletionMm[day] === record.depletionMm[index] &&
        ground.snowMm[day] === forcing.snowMm[index]
      ) {
        return from + day + 1;
      }
    }
    return to === days ? to : transition(Math.min(days, from + 4 * length));
  }
}
