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
}

/**
 * Works a station's climate out once; questions then share it.
 * @example stationClimate(prepareSeries(record), 46, assumptions).series.days // 21915
 */
export function stationClimate(
  series: DailySeries,
  latitudeDeg: number,
  { meltMmPerDegreeDay, snowStopsMm }: Pick<Assumptions, 'meltMmPerDegreeDay' | 'snowStopsMm'>,
): StationClimate {
  const forcing = dailyForcing(series, latitudeDeg, meltMmPerDegreeDay);
  return {
    series,
    forcing,
    windows: windowCheckOf(series.rainOrigin),
    warmRain: warmRainSums(series.rainMm, forcing.soilTempC, forcing.snowMm, snowStopsMm),
  };
}
