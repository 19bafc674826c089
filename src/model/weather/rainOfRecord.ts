import { ABSENT } from '../../schema/codes.ts';
import type { StationRecord } from '../../schema/weather.ts';
import { type Columns, newColumns } from '../run/columns.ts';
import { spreadMultiDayRain } from './spreadMultiDayRain.ts';

/** A station's daily rain as its record holds it: multi-day totals spread, gaps left open. */
export interface OpenRain {
  /** Daily rain [mm]; NaN where nothing was read. */
  readonly rainMm: Float64Array;
  /** RAIN_SPREAD on days that hold a share of a multi-day total, else RAIN_OBSERVED. */
  readonly origin: Uint8Array;
}

/** Daily rain of a raw record with its multi-day totals spread and its gaps left as NaN. [mm] */
export function rainOfRecord(record: StationRecord, columns?: Columns): OpenRain {
  const rainMm = valuesFromTenths(record.rainTenthsMm, columns);
  const origin = new Uint8Array(rainMm.length);
  spreadMultiDayRain(rainMm, record.multiDayRainTenthsMm, record.multiDayCount, origin);
  return { rainMm, origin };
}

/** A column of tenths as whole units; NaN where absent. */
export function valuesFromTenths(tenths: Int32Array, columns: Columns = newColumns): Float64Array {
  const values = columns.take(tenths.length);
  for (let i = 0; i < tenths.length; i++) values[i] = tenths[i] === ABSENT ? Number.NaN : tenths[i] / 10;
  return values;
}
