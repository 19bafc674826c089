import { DrywakeError, MissingDataError } from '../errors.ts';
import type { StationRecord } from '../schema/weather.ts';
import { meantOf } from './meant.ts';
import type { WeatherReader } from './weatherReader.ts';

/** Refusals that only mean "not here": the next reader is asked. */
const NOT_HERE = new Set(['STATION_UNKNOWN', 'STORE_EMPTY']);

/** Ids named in a hint. */
const NAMED = 6;

/** Several readers as one: a station comes from the first that has it. */
export function layeredReader(readers: readonly WeatherReader[]): WeatherReader {
  const stations = async () => {
    const lists = await Promise.all(readers.map((reader) => reader.stations()));
    const byId = new Map(lists.flat().map((station) => [station.id, station]));
    return [...byId.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  };
  return {
    stations,
    async records(ids) {
      const [first, ...others] = readers;
      const inFirst = new Set((await first.stations()).map(({ id }) => id));
      const own = ids.filter((id) => inFirst.has(id));
      const bulk = first.records && own.length > 1 ? await first.records(own) : [];
      const found = new Map(bulk.map((record) => [record.station.id, record]));
      const rest = layeredReader(others);
      const one = (id: string) => (inFirst.has(id) ? first.record(id) : rest.record(id));
      const all: StationRecord[] = [];
      for (const id of ids) all.push(found.get(id) ?? (await one(id)));
      return all;
    },
    async record(stationId) {
      let hint = '';
      for (const reader of readers) {
        try {
          return await reader.record(stationId);
        } catch (error) {
          if (!(error instanceof DrywakeError && NOT_HERE.has(error.code))) throw error;
          hint ||= error.hint;
        }
      }
      const ids = (await stations()).map(({ id }) => id);
      const meant = meantOf(stationId, ids);
      const few = `Stations to be had: ${ids.join(', ')}. Import more with "drywake weather import".`;
      throw new MissingDataError('STATION_UNKNOWN', `There is no record of a station "${stationId}".`, {
        hint: ids.length > NAMED ? hint : `${meant === null ? '' : `${meant} `}${few}`,
        details: { field: 'station', station: stationId },
      });
    },
  };
}
