import { type Columns, newColumns } from './columns.ts';

/**
 * Label-basis rain: the rain a label interval is taken to assume, day by day. [mm]
 *
 * Equation   `rainMm` on each date whose number of days since 1970-01-01 is a multiple of `everyDays`
 *            and whose mean temperature is above 0 °C; nothing else
 * Valid      any dates
 * Source     assumption of our own, calibrated at humid stations: 25 mm on every 12th day, some 760 mm a year
 */
export function labelWater(
  firstDay: number,
  meanTempC: Float64Array,
  rainMm: number,
  everyDays: number,
  columns: Columns = newColumns,
): Float64Array {
  const water = columns.take(meanTempC.length).fill(0);
  const offset = (((-firstDay % everyDays) + everyDays) % everyDays) | 0;
  for (let i = offset; i < water.length; i += everyDays) {
    if (meanTempC[i] > 0) water[i] = rainMm;
  }
  return water;
}
