import { type BreakdownResponse, warmthFactors } from '../model/run/breakdownSums.ts';
import { groundForcing, SOIL_TEMPERATURE_DAYS } from '../model/run/dailyForcing.ts';
import { soilRun } from '../model/run/soilRun.ts';
import type { TopsoilLayer } from '../model/water/topsoilLayer.ts';
import type { BreakdownRecord } from './breakdownRecord.ts';
import type { HistoricalYear } from './historicalYears.ts';
import type { StationClimate } from './stationClimate.ts';
import type { Trace, TraceOptions } from './traces.ts';

/** Days run past the last observed one before the first look whether the two courses have met. [d] */
const FIRST_LOOK_DAYS = 48;

/**
 * Observed days, then a year's own, out of runs over the record that are there already.
 *
 * The observed days are the record's own. From there on the year's weather is run with the water, snow and soil warmth
 * that the season left, only until it meets the year's own course: after a rain that fills the layer in both, and ten
 * days for the soil's mean temperature, every later day is that of the record. Where no such rain comes, the whole
 * course is run.
 *
 * Valid      rain known on all observed days; no irrigation, rest of season at its own rain
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
  const days = Math.min(options.horizonDays, series.days - start);
  const observed = Math.min(options.observedDays, days);
  const sums = new Float64Array(days + 1);
  const { start: origin } = options;
  for (let offset = 1; offset <= observed; offset++) {
    sums[offset] = record.sums[origin + offset] - record.sums[origin];
  }
  let done = observed;
  if (done < days) {
    const met = transition(observed, Math.min(days, observed + FIRST_LOOK_DAYS));
    const shift = sums[met] - record.sums[start + met];
    for (done = met + 1; done <= days; done++) sums[done] = record.sums[start + done] + shift;
  }
  return {
    year,
    lastOffset: days,
    sums,
    base: 0,
    labelRun,
    get liquidRainMm() {
      const rain = forcing.liquidRainMm.slice(start, start + days);
      rain.set(forcing.liquidRainMm.subarray(origin, origin + observed));
      return rain;
    },
  };

  /** Runs the year's weather from the season's state on, fills the sums, and returns the day on which they have met. */
  function transition(from: number, to: number): number {
    const last = origin + from - 1;
    const lead = Math.min(SOIL_TEMPERATURE_DAYS - 1, last + 1);
    const length = to - from;
    const meanTempC = new Float64Array(lead + length);
    meanTempC.set(forcing.meanTempC.subarray(last + 1 - lead, last + 1));
    meanTempC.set(forcing.meanTempC.subarray(start + from, start + to), lead);
    const rainMm = series.rainMm.subarray(start + from, start + to);
    const ground = groundForcing(rainMm, meanTempC, lead, forcing.snowMm[last], options.meltMmPerDegreeDay);
    const warmth = warmthFactors(ground.soilTempC, ground.snowMm, response);
    const et0Mm = forcing.et0Mm.subarray(start + from, start + to);
    const run = soilRun(ground.waterMm, et0Mm, warmth, layer, response, record.depletionMm[last]);
    const before = sums[from];
    for (let day = 1; day <= length; day++) sums[from + day] = before + run.sums[day];
    for (let day = SOIL_TEMPERATURE_DAYS - 1; day < length; day++) {
      const index = start + from + day;
      if (
        run.depletionMm[day] === record.depletionMm[index] &&
        ground.snowMm[day] === forcing.snowMm[index]
      ) {
        return from + day + 1;
      }
    }
    return to === days ? to : transition(from, Math.min(days, from + 4 * length));
  }
}
