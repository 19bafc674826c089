import {
  civilDateOf,
  dayNumberOf,
  RAIN_OBSERVED,
  type StationClimate,
  stationClimate,
} from '../../../src/index.ts';
import { assumptions } from '../seasonOf.ts';

/** Water of a trial: equal falls that take the place of rain between two calendar dates of each year. */
export interface SetWater {
  readonly from: { readonly month: number; readonly day: number };
  readonly days: number;
  readonly everyDays: number;
  readonly totalMm: number;
  /** True to add to the rain instead. */
  readonly besideRain?: boolean;
}

/** The climate of a record with a trial's water in each of its years; temperatures and the rest as they were. */
export function withWater({ series }: StationClimate, latitudeDeg: number, water: SetWater): StationClimate {
  const { from, days, everyDays, totalMm, besideRain = false } = water;
  const falls = Math.ceil(days / everyDays);
  const rainMm = series.rainMm.slice();
  const rainOrigin = series.rainOrigin.slice();
  const { year: firstYear } = civilDateOf(series.firstDay);
  const { year: lastYear } = civilDateOf(series.firstDay + series.days - 1);
  for (let year = firstYear; year <= lastYear; year++) {
    const start = dayNumberOf(year, from.month, from.day) - series.firstDay;
    for (let offset = 0; offset < days; offset++) {
      const index = start + offset;
      if (index < 0 || index >= series.days) continue;
      const fall = offset % everyDays === 0 ? totalMm / falls : 0;
      rainMm[index] = fall + (besideRain ? rainMm[index] : 0);
      if (!besideRain) rainOrigin[index] = RAIN_OBSERVED;
    }
  }
  return stationClimate({ ...series, rainMm, rainOrigin }, latitudeDeg, assumptions);
}
