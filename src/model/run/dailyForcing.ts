import { civilDateOf, dayNumberOf, isLeapYear } from '../../calendar.ts';
import type { DailySeries } from '../../schema/weather.ts';
import { hargreavesEt0 } from '../water/hargreavesEt0.ts';
import { snowMelt } from '../water/snowMelt.ts';
import { type Columns, newColumns } from './columns.ts';
import { radiationTable } from './radiationTable.ts';

/** Days whose mean air temperature is taken for the soil's: the day and the 10 before it. [d] */
export const SOIL_TEMPERATURE_DAYS = 11;

/** What the weather does to any soil at a place: columns as long as the series they come from. */
export interface DailyForcing {
  /** Mean air temperature [°C]. */
  readonly meanTempC: Float64Array;
  /** Reference evapotranspiration [mm/d]. */
  readonly et0Mm: Float64Array;
  /** Rain and snow melt that reach the ground [mm]. */
  readonly waterMm: Float64Array;
  /** Snow water on the ground at the end of the day [mm]. */
  readonly snowMm: Float64Array;
  /** Soil temperature: 11-day running mean of the air's [°C]. */
  readonly soilTempC: Float64Array;
}

/**
 * Daily forcing of a whole record, from its first day on. [°C; mm/d]
 *
 * Source     reference evapotranspiration: FAO-56 eq. 52; soil temperature: Climate Research 2, 183-191 (1993)
 * Valid      a gapless series; the first ten soil temperatures average the days there are
 * @example dailyForcing(series, 46, 2.5).soilTempC.length === series.days // true
 */
export function dailyForcing(
  series: DailySeries,
  latitudeDeg: number,
  meltMmPerDegreeDay: number,
  columns: Columns = newColumns,
): DailyForcing {
  const { days, maxTempC, minTempC, firstDay } = series;
  const meanTempC = columns.take(days);
  const et0Mm = columns.take(days);
  const radiation = radiationTable(latitudeDeg);
  let { year } = civilDateOf(firstDay);
  let dayOfYear = firstDay - dayNumberOf(year, 1, 1) + 1;
  let yearLength = isLeapYear(year) ? 366 : 365;
  for (let i = 0; i < days; i++) {
    meanTempC[i] = (maxTempC[i] + minTempC[i]) / 2;
    et0Mm[i] = hargreavesEt0(maxTempC[i], minTempC[i], radiation[dayOfYear]);
    dayOfYear++;
    if (dayOfYear > yearLength) {
      dayOfYear = 1;
      year++;
      yearLength = isLeapYear(year) ? 366 : 365;
    }
  }
  return { meanTempC, et0Mm, ...groundForcing(series.rainMm, meanTempC, 0, 0, meltMmPerDegreeDay, columns) };
}

/** The part of {@link DailyForcing} that follows from rain and mean temperature alone. */
export type GroundForcing = Omit<DailyForcing, 'et0Mm' | 'meanTempC'>;

/**
 * Snow, water reaching the ground, and soil temperature over a run of days.
 *
 * @param rainMm one value for each day of the run [mm]
 * @param meanTempC `leadDays` values before the run, then one for each of its days [°C]
 * @param leadDays days before the run that only feed the running mean; 0-10
 * @param startSnowMm snow water at the start of the run [mm]
 */
export function groundForcing(
  rainMm: Float64Array,
  meanTempC: Float64Array,
  leadDays: number,
  startSnowMm: number,
  meltMmPerDegreeDay: number,
  columns: Columns = newColumns,
): GroundForcing {
  const days = rainMm.length;
  const waterMm = columns.take(days);
  const snowMm = columns.take(days);
  const soilTempC = columns.take(days);
  let snow = startSnowMm;
  for (let i = 0; i < days; i++) {
    const temp = meanTempC[leadDays + i];
    if (temp <= 0) {
      snow += rainMm[i];
      waterMm[i] = 0;
    } else {
      const melted = snowMelt(snow, temp, meltMmPerDegreeDay);
      snow -= melted;
      waterMm[i] = rainMm[i] + melted;
    }
    snowMm[i] = snow;
  }
  trailingMeans(meanTempC, leadDays, soilTempC);
  return { waterMm, snowMm, soilTempC };
}

/** Means of each day and the ten before it, summed in the same order whatever day the run begins with. */
function trailingMeans(values: Float64Array, leadDays: number, means: Float64Array): void {
  const whole = Math.min(means.length, Math.max(0, SOIL_TEMPERATURE_DAYS - 1 - leadDays));
  for (let i = 0; i < whole; i++) means[i] = trailingMean(values, leadDays + i);
  for (let i = whole; i < means.length; i++) {
    const k = leadDays + i;
    const first = values[k - 10] + values[k - 9] + values[k - 8] + values[k - 7] + values[k - 6];
    means[i] =
      (first + values[k - 5] + values[k - 4] + values[k - 3] + values[k - 2] + values[k - 1] + values[k]) /
      11;
  }
}

function trailingMean(values: Float64Array, last: number): number {
  const first = Math.max(0, last - SOIL_TEMPERATURE_DAYS + 1);
  let sum = 0;
  for (let i = first; i <= last; i++) sum += values[i];
  return sum / (last - first + 1);
}
