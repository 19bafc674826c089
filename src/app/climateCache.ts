import type { Question } from '../schema/question.ts';
import { type StationWeather, stationWeather } from './stationWeather.ts';
import type { WeatherReader } from './weatherReader.ts';

/** Gives the climate of a question's station, and remembers the last few. */
export interface ClimateCache {
  of(question: Question): Promise<StationWeather>;
  /** Forgets everything: records have changed. */
  clear(): void;
}

/** Stations remembered; a 130-year record with its columns takes some 6 MB. */
const REMEMBERED = 24;

/**
 * A cache of climates over a reader; the same question asked twice at once is worked out once.
 * @example (await createClimateCache(weather).of(questionSchema.parse(demoQuestion))).record.station.id // 'demo-invented'
 */
export function createClimateCache(weather: WeatherReader): ClimateCache {
  const known = new Map<string, Promise<StationWeather>>();
  return {
    of(question) {
      const key = keyOf(question);
      const found = known.get(key) ?? stationWeather(weather, question);
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

/** All of a question that its climate depends on. */
function keyOf(question: Question): string {
  const { station, latitudeDeg, elevationM, temperatureStation, fillFromNeighbours, gauge, assume } =
    question;
  return JSON.stringify([
    ...[station, latitudeDeg, elevationM, temperatureStation, fillFromNeighbours],
    ...[gauge.map(({ date, rainMm }) => [date, rainMm]), assume.meltMmPerDegreeDay, assume.snowStopsMm],
  ]);
}
