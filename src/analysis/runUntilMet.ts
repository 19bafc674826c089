import { powerOf } from '../model/breakdown/powerTable.ts';
import { warmthOf, warmthTable } from '../model/breakdown/warmthTable.ts';
import { type BreakdownResponse, moistureScale } from '../model/run/breakdownSums.ts';
import { newColumns } from '../model/run/columns.ts';
import { SOIL_TEMPERATURE_DAYS } from '../model/run/dailyForcing.ts';
import { snowMelt } from '../model/water/snowMelt.ts';
import type { TopsoilLayer } from '../model/water/topsoilLayer.ts';
import type { BreakdownRecord } from './breakdownRecord.ts';
import type { StationClimate } from './stationClimate.ts';

/** A stretch of joined weather to run: which day of the record stands for each, and where it may meet the year's own course. */
export interface JoinedWeather {
  /** Index in the record of the day that stands for an offset. */
  readonly indexAt: (offset: number) => number;
  /** Index of the record's day before the first one run; −1 where there is none. */
  readonly before: number;
  /** First offset run, and the one after the last. */
  readonly from: number;
  readonly end: number;
  /** Index of the year's own day at offset 0. */
  readonly start: number;
  /** First offset from which the two courses may be one: ten days after the last observed one. */
  readonly mayMeetFrom: number;
  readonly meltMmPerDegreeDay: number;
}

/**
 * Runs joined weather day by day until water and snow meet the year's own course, and adds each day's breakdown to the
 * sums. The days are few and of many years: nothing is set aside for columns.
 *
 * Equation   snow, soil warmth, water and breakdown of a day as in `groundForcing`, `warmthFactors` and `soilRun`
 * Checked    test/analysis/splicedTrace.test.ts (against the course run by those)
 * @param sums running sum; entry `from` must hold the days before, the ones after it are filled in
 * @returns the offset after the last day run: from there on the days are the record's own
 */
export function runUntilMet(
  { series, forcing, columns = newColumns }: StationClimate,
  record: BreakdownRecord,
  layer: TopsoilLayer,
  response: BreakdownResponse,
  { indexAt, before, from, end, start, mayMeetFrom, meltMmPerDegreeDay }: JoinedWeather,
  startDepletionMm: number,
  sums: Float64Array,
): number {
  const { tewMm, rewMm, wetEvaporationCoefficient } = layer;
  const perDrying = tewMm > rewMm ? wetEvaporationCoefficient / (tewMm - rewMm) : 0;
  const { table, slope } = moistureScale(layer, response);
  const perDepletion = slope / (2 * tewMm);
  const warmths = warmthTable(response.q10);
  const lead = Math.min(SOIL_TEMPERATURE_DAYS - 1, before + 1);
  const tempsC = columns.take(lead + end - from);
  for (let k = 0; k < lead; k++) tempsC[k] = forcing.meanTempC[before + 1 - lead + k];
  let snow = before < 0 ? 0 : forcing.snowMm[before];
  let depletion = startDepletionMm;
  let sum = 0;
  for (let offset = from; offset < end; offset++) {
    const index = indexAt(offset);
    const tempC = forcing.meanTempC[index];
    const melted = snowMelt(snow, tempC, meltMmPerDegreeDay);
    snow = tempC <= 0 ? snow + series.rainMm[index] : snow - melted;
    const waterMm = tempC <= 0 ? 0 : series.rainMm[index] + melted;

    const wetted = depletion > waterMm ? depletion - waterMm : 0;
    const left = tewMm - wetted;
    const et0Mm = forcing.et0Mm[index];
    const wanted = wetted <= rewMm ? wetEvaporationCoefficient * et0Mm : perDrying * et0Mm * left;
    depletion = wetted + Math.min(wanted, left);

    const day = lead + offset - from;
    tempsC[day] = tempC;
    if (snow <= response.snowStopsMm) {
      const warmth = warmthOf(warmths, trailingMean(tempsC, day));
      if (warmth > 0) sum += warmth * powerOf(table, 1 - (wetted + depletion) * perDepletion);
    }
    sums[offset + 1] = sums[from] + sum;
    const own = start + offset;
    if (offset >= mayMeetFrom && depletion === record.depletionMm[own] && snow === forcing.snowMm[own]) {
      return offset + 1;
    }
  }
  return end;
}

/** Mean of a day and of up to ten before it. */
function trailingMean(values: Float64Array, last: number): number {
  const first = Math.max(0, last - SOIL_TEMPERATURE_DAYS + 1);
  let sum = 0;
  for (let i = first; i <= last; i++) sum += values[i];
  return sum / (last - first + 1);
}
