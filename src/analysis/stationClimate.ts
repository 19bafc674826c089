import type { Columns } from '../model/run/columns.ts';
import { type DailyForcing, dailyForcing } from '../model/run/dailyForcing.ts';
import { warmRainSums } from '../model/run/warmRainSums.ts';
import { type WindowCheck, windowCheckOf } from '../model/weather/usableWindow.ts';
import type { Assumptions } from '../schema/assumptions.ts';
import type { DailySeries } from '../schema/weather.ts';

/** A station's record with everything that follows from the weather alone, for any soil and active. */
export interface StationClimate {
  readonly series: DailySeries;
  readonly forcing: DailyForcing;
  readonly windows: WindowCheck;
  /** Running sum of warm rain [mm], length days + 1. */
  readonly warmRain: Float64Array;
  /** Where runs over the record take their columns; new ones where it is absent. */
  readonly columns?: Columns;
}

/**
 * Works a station's climate out once; questions then share it. Columns have an entry a day of the series.
 * @param latitudeDeg latitude of the station [°], south negative
 * @param columns where it and all runs over it take their columns: reused ones end with the next station
 * @example stationClimate(prepareSeries(record), 46, assumptions).series.days // 21915
 */
export function stationClimate(
  series: DailySeries,
  latitudeDeg: number,
  { meltMmPerDegreeDay, snowStopsMm }: Pick<Assumptions, 'meltMmPerDegreeDay' | 'snowStopsMm'>,
  columns?: Columns,
): StationClimate {
  const forcing = dailyForcing(series, latitudeDeg, meltMmPerDegreeDay, columns);
  return {
    series,
    forcing,
    windows: windowCheckOf(series.rainOrigin),
    warmRain: warmRainSums(series.rainMm, forcing.soilTempC, forcing.snowMm, snowStopsMm, columns),
    columns,
  };
}
