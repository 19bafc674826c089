import type { StationClimate } from '../analysis/stationClimate.ts';
import { civilDateOf, dayNumberOf, isLeapYear } from '../calendar.ts';
import { isRainMissing } from '../schema/codes.ts';

/** Share of a calendar year's days whose rain must be observed for the year to count. */
const FULL_YEAR_FRACTION = 0.98;

const remembered = new WeakMap<StationClimate, number | null>();

/** Mean rain of the record's calendar years that are observed on at least 98 % of their days; null without one. [mm] */
export function meanAnnualRainMm(climate: StationClimate): number | null {
  const known = remembered.get(climate);
  if (known !== undefined) return known;
  const mean = workOut(climate);
  remembered.set(climate, mean);
  return mean;
}

function workOut({ series }: StationClimate): number | null {
  const { firstDay, days, rainMm, rainOrigin } = series;
  const sums: number[] = [];
  const { year: first } = civilDateOf(firstDay);
  const { year: last } = civilDateOf(firstDay + days - 1);
  for (let year = first; year <= last; year++) {
    const from = dayNumberOf(year, 1, 1) - firstDay;
    const length = isLeapYear(year) ? 366 : 365;
    if (from < 0 || from + length > days) continue;
    let sum = 0;
    let observed = 0;
    for (let day = from; day < from + length; day++) {
      if (isRainMissing(rainOrigin[day])) continue;
      sum += rainMm[day];
      observed++;
    }
    if (observed >= FULL_YEAR_FRACTION * length) sums.push(sum);
  }
  return sums.length === 0 ? null : sums.reduce((total, sum) => total + sum, 0) / sums.length;
}
