import { MissingDataError } from '../errors.ts';
import type { Question } from '../schema/question.ts';
import type { StationExtent, StationRecord } from '../schema/weather.ts';
import { stationWeather } from './stationWeather.ts';
import type { WeatherReader } from './weatherReader.ts';
import type { PackedWeather } from './workshop.ts';

/** Gathers all records that a question's climate is worked out from, to be worked on elsewhere. */
export async function packWeather(weather: WeatherReader, question: Question): Promise<PackedWeather> {
  const records = new Map<string, StationRecord>();
  let stations: readonly StationExtent[] = [];
  await stationWeather(
    {
      async stations() {
        stations = await weather.stations();
        return stations;
      },
      async record(id) {
        const record = await weather.record(id);
        records.set(id, record);
        return record;
      },
    },
    question,
  );
  return { records: [...records.values()], stations };
}

/** Reads from packed records. */
export function packedReader({ records, stations }: PackedWeather): WeatherReader {
  return {
    stations: async () => stations,
    async record(id) {
      const found = records.find(({ station }) => station.id === id);
      if (found) return found;
      throw new MissingDataError('STATION_UNKNOWN', `The record of ${id} was not handed over.`, {
        hint: 'Ask again for one station alone.',
        details: { station: id },
      });
    },
  };
}
