import { type BreakdownResponse, warmthFactors } from '../model/run/breakdownSums.ts';
import { type DailyForcing, groundForcing, SOIL_TEMPERATURE_DAYS } from '../model/run/dailyForcing.ts';
import { labelWater } from '../model/run/labelWater.ts';
import { liquidRain } from '../model/run/liquidRain.ts';
import { soilRun } from '../model/run/soilRun.ts';
import { startDepletionOf, wetnessRun } from '../model/run/wetnessRun.ts';
import type { TopsoilLayer } from '../model/water/topsoilLayer.ts';
import { type IrrigationCourse, irrigationAt } from '../model/weather/ownRecords.ts';
import { RAIN_FILLED } from '../schema/codes.ts';
import { type BreakdownRecord, type LabelBasis, referenceLayer } from './breakdownRecord.ts';
import type { HistoricalYear } from './historicalYears.ts';
import { splicedTrace } from './splicedTrace.ts';
import type { StationClimate } from './stationClimate.ts';

/** One course the season may take: observed weather where there is some, a past year's from there on. */
export interface Trace {
  readonly year: number;
  /** Last offset from the first application that the trace reaches [d]. */
  readonly lastOffset: number;
  /** Breakdown days before offset d, counted from the first application: `sums[base + d] - sums[base]`. */
  readonly sums: Float64Array;
  readonly base: number;
  /** Rain that falls as rain, and irrigation, of the days from one offset to before another [mm]. */
  liquidRainMm(firstOffset: number, endOffset: number): Float64Array;
  /** The label run along the trace, at the trace's own warmth; worked out when it is asked for. */
  labelRun(): LabelRun;
}

/** Breakdown days of the label run along a trace; read like a {@link Trace}'s own. */
export type LabelRun = Pick<Trace, 'sums' | 'base'>;

/** What decides the traces of a question beside the years. */
export interface TraceOptions {
  /** Index of the first application in the record; may lie outside it while planning. */
  readonly start: number;
  /** Days from the first application that are observed, the as-of day included; 0 while planning. */
  readonly observedDays: number;
  /** Factor on the rain of days not observed. */
  readonly restOfSeasonRain: number;
  /** Water given to the field, by days from the first application. */
  readonly irrigation: IrrigationCourse;
  /** Days to follow from the first application on [d]. */
  readonly horizonDays: number;
  readonly meltMmPerDegreeDay: number;
  readonly basis: LabelBasis;
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
  const untouched = options.restOfSeasonRain === 1 && options.irrigation.amountsMm.length === 0;
  if (untouched && options.observedDays === 0) {
    return years.map((year) => recordTrace(climate, record, year, options.horizonDays));
  }
  const whole = (year: HistoricalYear) => joinedTrace(climate, record, layer, response, year, options);
  if (!untouched || options.start < 0) return years.map(whole);
  return years.map((year) =>
    splicedTrace(climate, record, layer, response, year, options, () => whole(year).labelRun()),
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
    liquidRainMm(firstOffset, endOffset) {
      const [from, to] = [start + firstOffset, start + Math.min(endOffset, lastOffset)];
      return liquidRain(series.rainMm.subarray(from, to), forcing.meanTempC.subarray(from, to));
    },
    labelRun: () => ({ sums: record.labelSums, base: start }),
  };
}

/**
 * Observed days, then the year's own; irrigation on its days throughout. A gap in the observed rain takes the
 * year's own day; one that neighbouring stations fill counts as observed. The water state at the start is the record's own at that date while
 * the season is under way, the year's while planning, and so are the dates of label-basis rain; the soil's running
 * mean temperature averages the joined series.
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
  const snowMm = origin > 0 ? forcing.snowMm[origin - 1] : 0;
  const depletionMm = depletionAtStart(forcing, record, layer, origin, options.irrigation);
  const ground = groundForcing(rainMm, meanTempC, lead, snowMm, options.meltMmPerDegreeDay);
  const liquidRainMm = liquidRain(rainMm, meanTempC.subarray(lead));
  for (const column of [ground.waterMm, liquidRainMm]) irrigate(column, options.irrigation);
  const warmth = warmthFactors(ground.soilTempC, ground.snowMm, response);
  let sums: Float64Array | undefined;
  return {
    year,
    lastOffset: days,
    // Where a spliced trace asks for the label run alone, the soil's own is not run again.
    get sums() {
      sums ??= soilRun(ground.waterMm, et0Mm, warmth, layer, response, depletionMm).sums;
      return sums;
    },
    base: 0,
    liquidRainMm: (firstOffset, endOffset) => liquidRainMm.subarray(firstOffset, endOffset),
    labelRun: () => {
      const { labelRainMm, labelRainEveryDays } = options.basis;
      const reference = referenceLayer(options.basis);
      const tempC = meanTempC.subarray(lead);
      const water = labelWater(series.firstDay + origin, tempC, labelRainMm, labelRainEveryDays);
      const before = origin > 0 ? record.labelDepletionMm[origin - 1] : startDepletionOf(reference);
      return { sums: soilRun(water, et0Mm, warmth, reference, response, before).sums, base: 0 };
    },
  };
}

/** Adds irrigation to a column of water by days from the first application, frozen or not; in place. */
function irrigate(waterMm: Float64Array, irrigation: IrrigationCourse): void {
  if (irrigation.amountsMm.length === 0) return;
  for (let offset = 0; offset < waterMm.length; offset++) {
    waterMm[offset] += irrigationAt(irrigation, offset);
  }
}

/** Depletion at the end of the day before index `origin`, with the irrigation of the days before it. [mm] */
function depletionAtStart(
  forcing: DailyForcing,
  record: BreakdownRecord,
  layer: TopsoilLayer,
  origin: number,
  irrigation: IrrigationCourse,
): number {
  const endOf = (day: number) => (day >= 0 ? record.depletionMm[day] : startDepletionOf(layer));
  const lead = Math.min(origin, -irrigation.firstOffset);
  if (lead <= 0) return endOf(origin - 1);
  const waterMm = forcing.waterMm
    .slice(origin - lead, origin)
    .map((mm, day) => mm + irrigationAt(irrigation, day - lead));
  const et0Mm = forcing.et0Mm.subarray(origin - lead, origin);
  return wetnessRun(waterMm, et0Mm, layer, endOf(origin - lead - 1)).depletionMm[lead - 1];
}
