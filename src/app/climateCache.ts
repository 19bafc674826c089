import { type StationClimate, stationClimate } from '../analysis/stationClimate.ts';
import { MissingDataError } from '../errors.ts';
import { prepareSeries } from '../model/weather/prepareSeries.ts';
import type { Question } from '../schema/question.ts';
import type { StationRecord } from '../schema/weather.ts';
import type { WeatherReader } from './weatherReader.ts';

/** A station's record with its climate. */
export interface StationWeather {
  readonly record: StationRecord;
  readonly climate: StationClimate;
}

/** Gives the climate of a question's station, and remembers the last few. */
export interface ClimateCache {
  of(question: Question): Promise<StationWeather>;
  /** Forgets everything: records have changed. */
  clear(): void;
}

/** Stations remembered; a 130-year record with its columns takes some 6 MB. */
const REMEMBERED = 24;

/** A cache of climates over a reader; the same question asked twice at once is worked out once. */
export function createClimateCache(weather: WeatherReader): ClimateCache {
  const known = new Map<string, Promise<StationWeather>>();
  return {
    of(question) {
      const { station, latitudeDeg, assume } = question;
      const key = JSON.stringify([station, latitudeDeg, assume.meltMmPerDegreeDay, assume.snowStopsMm]);
      const found = known.get(key) ?? load(weather, question);
      known.delete(key);
      known.set(key, found);
      found.catch(() => known.delete(key));
      const oldest = known.keys().next().value;
      if (known.size > REMEMBERED && oldest !== undefined) known.delete(oldest);
      return found;
    },
    clear: () => known.clear(),
  };
}

async function load(weather: WeatherReader, question: Question): Promise<StationWeather> {
  const record = await weather.record(question.station);
  const latitudeDeg = question.latitudeDeg ?? record.station.latitudeDeg;
  if (latitudeDeg === null) {
    throw new MissingDataError(
      'LATITUDE_MISSING',
      `The record of ${question.station} does not say where it lies, and no latitude was given.`,
      {
        hint: 'Give the latitude in degrees (--lat 45.66), or import the station list with the record.',
        details: { field: 'latitudeDeg' },
      },
    );
  }
  const station = {
    ...record.station,
    latitudeDeg,
    elevationM: question.elevationM ?? record.station.elevationM,
  };
  const series = prepareSeries({ ...record, station });
  return { record, climate: stationClimate(series, latitudeDeg, question.assume) };
}
