import { isRainMissing, RAIN_SPREAD, TEMP_OBSERVED } from '../schema/codes.ts';
import type { DailySeries } from '../schema/weather.ts';

/** How many days of a series are not as they were read. */
export interface DayCounts {
  /** Days without rain of their own, filled. */
  readonly rainMissing: number;
  /** Days that hold a share of a total of several days. */
  readonly rainSpread: number;
  /** Days with a filled temperature. */
  readonly temperatureFilled: number;
}

const counted = new WeakMap<DailySeries, DayCounts>();

/** Days of a series by what became of them, counted once: every answer tells them. */
export function dayCounts(series: DailySeries): DayCounts {
  const found = counted.get(series) ?? countDays(series);
  counted.set(series, found);
  return found;
}

function countDays({ days, rainOrigin, tempOrigin }: DailySeries): DayCounts {
  let rainMissing = 0;
  let rainSpread = 0;
  let temperatureFilled = 0;
  for (let day = 0; day < days; day++) {
    if (isRainMissing(rainOrigin[day])) rainMissing++;
    if (rainOrigin[day] === RAIN_SPREAD) rainSpread++;
    if (tempOrigin[day] !== TEMP_OBSERVED) temperatureFilled++;
  }
  return { rainMissing, rainSpread, temperatureFilled };
}
