import type { StationExtent, StationRecord } from '../schema/weather.ts';
import { companionStation } from './companionStation.ts';
import { type LentRecord, lentTemperatures } from './lentTemperatures.ts';
import type { WeatherReader } from './weatherReader.ts';

/** More than the degrees of latitude in the farthest way that temperatures are borrowed over. [°] */
const BAND_DEG = 1;

/** Gives records of stations that measure rain alone the temperatures of their companions. */
export interface Companions {
  /** The records as they are, or with the temperatures lent to them; where there is no companion, as they are. */
  lend(records: readonly StationRecord[]): Promise<LentRecord[]>;
}

/**
 * Companions among all stations of a reader, the same as for a single question. Only stations of the same latitudes are
 * looked at, so that many stations stay quick; each group's companions are read together.
 */
export function companionsOf(stations: readonly StationExtent[], weather: WeatherReader): Companions {
  const bare = new Set(stations.filter((one) => one.temperatureDays === 0).map(({ id }) => id));
  const lenders = stations
    .flatMap((station) =>
      station.latitudeDeg === null || station.temperatureDays === 0
        ? []
        : [{ station, latitudeDeg: station.latitudeDeg }],
    )
    .sort((a, b) => a.latitudeDeg - b.latitudeDeg);
  const firstFrom = (latitudeDeg: number): number => {
    let low = 0;
    let high = lenders.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (lenders[middle].latitudeDeg < latitudeDeg) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const companionIdOf = ({ station, firstDay, rainTenthsMm }: StationRecord): string | null => {
    if (!bare.has(station.id) || station.latitudeDeg === null) return null;
    const { latitudeDeg } = station;
    const near = lenders.slice(firstFrom(latitudeDeg - BAND_DEG), firstFrom(latitudeDeg + BAND_DEG));
    const span = { firstDay, lastDay: firstDay + rainTenthsMm.length - 1 };
    const found = companionStation(
      station,
      span,
      near.map((one) => one.station),
    );
    return found?.station.id ?? null;
  };
  return {
    async lend(records) {
      const wanted = records.map(companionIdOf);
      const ids = [...new Set(wanted.filter((id) => id !== null))];
      const read = ids.length === 0 ? [] : await recordsOf(weather, ids);
      const byId = new Map(read.map((record) => [record.station.id, record]));
      return records.map((record, index) => {
        const companion = byId.get(wanted[index] ?? '');
        return companion === undefined
          ? { record, temperatureStation: null }
          : lentTemperatures(record, companion);
      });
    },
  };
}

/** Several stations' records, together where the reader can. */
export async function recordsOf(weather: WeatherReader, ids: readonly string[]): Promise<StationRecord[]> {
  if (weather.records) return weather.records(ids);
  const records: StationRecord[] = [];
  for (const id of ids) records.push(await weather.record(id));
  return records;
}
