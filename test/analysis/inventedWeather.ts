import { type StationClimate, stationClimate } from '../../src/analysis/stationClimate.ts';
import { dayNumberOf } from '../../src/calendar.ts';
import { assumptionsSchema } from '../../src/schema/assumptions.ts';
import type { DailySeries } from '../../src/schema/weather.ts';

/** Shape of a made-up climate for property tests. */
export interface InventedWeather {
  readonly seed: number;
  /** Share of wet days [0-1]. */
  readonly wetShare: number;
  /** Mean rain of a wet day [mm]. */
  readonly wetDayMm: number;
  /** Yearly mean temperature [°C]. */
  readonly meanTempC: number;
}

export const FIRST_YEAR = 2000;
const YEARS = 16;

/** A small seeded generator; only its repeatability matters here. */
function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A gapless made-up series from 1 January 2000, 16 years long. */
export function inventedSeries({ seed, wetShare, wetDayMm, meanTempC }: InventedWeather): DailySeries {
  const firstDay = dayNumberOf(FIRST_YEAR, 1, 1);
  const days = dayNumberOf(FIRST_YEAR + YEARS, 1, 1) - firstDay;
  const next = generator(seed);
  const rainMm = new Float64Array(days);
  const maxTempC = new Float64Array(days);
  const minTempC = new Float64Array(days);
  for (let day = 0; day < days; day++) {
    const season = meanTempC - 14 * Math.cos((2 * Math.PI * (day % 365.25)) / 365.25) + 8 * (next() - 0.5);
    const spread = 3 + 12 * next();
    maxTempC[day] = season + spread / 2;
    minTempC[day] = season - spread / 2;
    rainMm[day] = next() < wetShare ? -wetDayMm * Math.log(1 - next()) : 0;
  }
  return {
    station: {
      id: 'invented',
      name: 'Invented',
      latitudeDeg: 47,
      longitudeDeg: null,
      elevationM: null,
      invented: true,
    },
    firstDay,
    days,
    rainMm,
    maxTempC,
    minTempC,
    rainOrigin: new Uint8Array(days),
    tempOrigin: new Uint8Array(days),
  };
}

const assumptions = assumptionsSchema.parse({});

/** Climate of a made-up series at 47° north. */
export const climateOfSeries = (series: DailySeries): StationClimate =>
  stationClimate(series, 47, assumptions);
