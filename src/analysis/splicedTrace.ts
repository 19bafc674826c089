import type { BreakdownResponse } from '../model/run/breakdownSums.ts';
import { newColumns } from '../model/run/columns.ts';
import { SOIL_TEMPERATURE_DAYS } from '../model/run/dailyForcing.ts';
import { liquidRain } from '../model/run/liquidRain.ts';
import { startDepletionOf } from '../model/run/wetnessRun.ts';
import type { TopsoilLayer } from '../model/water/topsoilLayer.ts';
import { RAIN_FILLED } from '../schema/codes.ts';
import type { BreakdownRecord } from './breakdownRecord.ts';
import type { HistoricalYear } from './historicalYears.ts';
import { runUntilMet } from './runUntilMet.ts';
import type { StationClimate } from './stationClimate.ts';
import type { Trace, TraceOptions } from './traces.ts';

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
  climate: StationClimate,
  record: BreakdownRecord,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  { year, start }: HistoricalYear,
  options: TraceOptions,
  labelRun: Trace['labelRun'],
): Trace {
  const { series, forcing } = climate;
  const { start: origin } = options;
  const days = Math.min(options.horizonDays, series.days - start);
  const observed = Math.min(options.observedDays, days);
  const gap = series.rainOrigin.subarray(origin, origin + observed).indexOf(RAIN_FILLED);
  const from = gap < 0 ? observed : gap;
  const sums = (climate.columns ?? newColumns).take(days + 1);
  sums[0] = 0;
  for (let offset = 1; offset <= from; offset++) {
    sums[offset] = record.sums[origin + offset] - record.sums[origin];
  }
  if (from < days) {
    const last = origin + from - 1;
    const weather = {
      indexAt,
      before: last,
      ...{ from, end: days, start },
      mayMeetFrom: observed + SOIL_TEMPERATURE_DAYS - 1,
      meltMmPerDegreeDay: options.meltMmPerDegreeDay,
    };
    const startDepletionMm = last < 0 ? startDepletionOf(layer) : record.depletionMm[last];
    const met = runUntilMet(climate, record, layer, response, weather, startDepletionMm, sums);
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
      const length = Math.min(endOffset, days) - firstOffset;
      const column = (values: Float64Array) =>
        Float64Array.from({ length }, (_, day) => values[indexAt(firstOffset + day)]);
      return liquidRain(column(series.rainMm), column(forcing.meanTempC));
    },
  };

  /** The season's own day while it is observed and no gap, else the year's. */
  function indexAt(offset: number): number {
    const real = origin + offset;
    return offset < observed && series.rainOrigin[real] !== RAIN_FILLED ? real : start + offset;
  }
}
