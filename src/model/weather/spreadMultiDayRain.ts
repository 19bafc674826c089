import { ABSENT, RAIN_SPREAD } from '../../schema/codes.ts';

/** Longest run of missing days that a multi-day total without a day count may cover. [d] */
const MAX_SPREAD_DAYS = 31;

/**
 * Spreads each multi-day rain total evenly over the days it covers, in place, and marks them.
 *
 * Equation   rain of each covered day = total / n
 * Symbols    total = MDPR on the last day, n = DAPR, or, where absent, the run of missing days
 *            that ends there (at most 31)
 * Valid      only where every covered day, the last one included, has no rain value of its own;
 *            otherwise the total is left aside
 * Source     element definitions of the GHCN-Daily readme, version 3.26
 *
 * @param rainMm NaN where missing; changed in place [mm]
 * @param origin set to RAIN_SPREAD on each day that got its share
 */
export function spreadMultiDayRain(
  rainMm: Float64Array,
  multiDayRainTenthsMm: Int32Array,
  multiDayCount: Int32Array,
  origin: Uint8Array,
): void {
  for (let last = 0; last < rainMm.length; last++) {
    const total = multiDayRainTenthsMm[last];
    if (total === ABSENT || !Number.isNaN(rainMm[last])) continue;
    const counted = multiDayCount[last];
    const first = last - (counted === ABSENT ? runEndingAt(rainMm, last) : counted) + 1;
    if (first > last || first < 0 || !allMissing(rainMm, first, last)) continue;
    const share = total / 10 / (last - first + 1);
    for (let day = first; day <= last; day++) {
      rainMm[day] = share;
      origin[day] = RAIN_SPREAD;
    }
  }
}

function runEndingAt(rainMm: Float64Array, last: number): number {
  let length = 0;
  while (length < MAX_SPREAD_DAYS && last - length >= 0 && Number.isNaN(rainMm[last - length])) length++;
  return length;
}

function allMissing(rainMm: Float64Array, first: number, last: number): boolean {
  for (let day = first; day <= last; day++) if (!Number.isNaN(rainMm[day])) return false;
  return true;
}
