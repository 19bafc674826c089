import type { StationClimate } from '../../src/analysis/stationClimate.ts';
import { dayNumberOf, isoDateOf, parseIsoDate } from '../../src/calendar.ts';
import { RAIN_FILLED } from '../../src/schema/codes.ts';
import type { DailySeries } from '../../src/schema/weather.ts';
import { climateOfSeries } from './inventedWeather.ts';

/** First and last year of a counted record; 2021 is the season asked about, 2001 to 2020 are its past years. */
export const FIRST_YEAR = 2001;
export const LAST_YEAR = 2022;

/** Rain of a day, by its date and year. [mm] */
export type RainRule = (monthDay: string, year: number) => number;

/** A record of even warmth in which rain falls by a rule that a reader can count by hand. */
export function countedClimate(rainOn: RainRule, missing: readonly string[] = []): StationClimate {
  const firstDay = dayNumberOf(FIRST_YEAR, 1, 1);
  const days = dayNumberOf(LAST_YEAR + 1, 1, 1) - firstDay;
  const rainMm = Float64Array.from({ length: days }, (_, index) => {
    const iso = isoDateOf(firstDay + index);
    return rainOn(iso.slice(5), Number(iso.slice(0, 4)));
  });
  const rainOrigin = new Uint8Array(days);
  for (const iso of missing) rainOrigin[parseIsoDate(iso) - firstDay] = RAIN_FILLED;
  const series: DailySeries = {
    station: {
      id: 'counted',
      name: 'Counted (invented)',
      latitudeDeg: 47,
      longitudeDeg: null,
      elevationM: null,
      invented: true,
    },
    firstDay,
    days,
    rainMm,
    maxTempC: new Float64Array(days).fill(20),
    minTempC: new Float64Array(days).fill(8),
    rainOrigin,
    tempOrigin: new Uint8Array(days),
  };
  return climateOfSeries(series);
}

/** Ten millimetres more each year, all on 10 July: 10 in 2001, 200 in 2020, 210 in 2021. */
export const risingYears: RainRule = (monthDay, year) => (monthDay === '07-10' ? 10 * (year - 2000) : 0);
/** Thirty millimetres each year, a day later each time: 1 July in 2001, 20 July in 2020, 21 July in 2021. */
export const laterYears: RainRule = (monthDay, year) =>
  monthDay === `07-${String(year - 2000).padStart(2, '0')}` ? 30 : 0;
