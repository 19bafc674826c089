import { type Columns, newColumns } from './columns.ts';

/** Soil temperature above which rain counts as warm. [°C] */
const WARM_SOIL_C = 5;

/**
 * Running sum of warm rain, the rain on days with soil above 5 °C and no more than `snowStopsMm` of snow
 * water; entry i holds the days before index i. [mm], length n + 1
 */
export function warmRainSums(
  rainMm: Float64Array,
  soilTempC: Float64Array,
  snowMm: Float64Array,
  snowStopsMm: number,
  columns: Columns = newColumns,
): Float64Array {
  const sums = columns.take(rainMm.length + 1);
  sums[0] = 0;
  for (let i = 0; i < rainMm.length; i++) {
    const warm = soilTempC[i] > WARM_SOIL_C && snowMm[i] <= snowStopsMm;
    sums[i + 1] = sums[i] + (warm ? rainMm[i] : 0);
  }
  return sums;
}
