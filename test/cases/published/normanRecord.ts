import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { parse } from 'csv-parse/sync';
import {
  dayNumberOf,
  mmFromInches,
  RAIN_FILLED,
  RAIN_OBSERVED,
  type StationClimate,
  stationClimate,
} from '../../../src/index.ts';
import { assumptions } from '../seasonOf.ts';

/** Half the daily range that is put around the record's daily mean temperature. [°C] */
export const NORMAN_HALF_RANGE_C = 6.5;

const FIRST_YEAR = 1981;
const LAST_YEAR = 2010;

/**
 * Climate of Norman 3 SSE, Oklahoma, 1981-2010, from a file that holds rain [in] and the daily mean temperature [°F]
 * only: the range of a day is assumed. A missing rain counts as missing, a missing temperature repeats the day before.
 */
export function normanClimate(folder: string): StationClimate {
  const text = gunzipSync(readFileSync(`${folder}/stations/stationData_USC00346386.csv.gz`)).toString('utf8');
  const rows = parse(text, { columns: true }) as Record<string, string>[];
  const firstDay = dayNumberOf(FIRST_YEAR, 1, 1);
  const days = dayNumberOf(LAST_YEAR + 1, 1, 1) - firstDay;
  const rainMm = new Float64Array(days);
  const meanTempC = new Float64Array(days).fill(Number.NaN);
  const rainOrigin = new Uint8Array(days).fill(RAIN_FILLED);
  for (const { year, month, day, prcp, temp } of rows) {
    const index = dayNumberOf(Number(year), Number(month), Number(day)) - firstDay;
    if (index < 0 || index >= days) continue;
    if (isNumber(prcp)) {
      rainMm[index] = mmFromInches(Number(prcp));
      rainOrigin[index] = RAIN_OBSERVED;
    }
    if (isNumber(temp)) meanTempC[index] = (Number(temp) - 32) / 1.8;
  }
  for (let day = 1; day < days; day++) if (Number.isNaN(meanTempC[day])) meanTempC[day] = meanTempC[day - 1];
  const station = {
    id: 'USC00346386',
    name: 'Norman 3 SSE',
    latitudeDeg: 35.181,
    longitudeDeg: -97.438,
    elevationM: 344,
    invented: false,
  };
  const series = {
    station,
    firstDay,
    days,
    rainMm,
    maxTempC: meanTempC.map((value) => value + NORMAN_HALF_RANGE_C),
    minTempC: meanTempC.map((value) => value - NORMAN_HALF_RANGE_C),
    rainOrigin,
    tempOrigin: new Uint8Array(days),
  };
  return stationClimate(series, station.latitudeDeg, assumptions);
}

const isNumber = (text: string): boolean => text !== '' && text !== 'NA';
