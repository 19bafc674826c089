import { borrowTemperatures, lapseC } from '../model/weather/borrowTemperatures.ts';
import type { StationRecord } from '../schema/weather.ts';
import type { WeatherHelp } from '../schema/weatherHelp.ts';
import { distanceBetween } from './companionStation.ts';

/** A record with temperatures, and the station that they are borrowed from; null where they are its own. */
export interface LentRecord {
  readonly record: StationRecord;
  readonly temperatureStation: WeatherHelp['temperatureStation'];
}

/** A record with the temperatures of a companion, moved to its height, and what was done. Pure. */
export function lentTemperatures(record: StationRecord, companion: StationRecord): LentRecord {
  const { id, name, elevationM: from } = companion.station;
  const { elevationM: to } = record.station;
  return {
    record: borrowTemperatures(record, companion),
    temperatureStation: {
      id,
      name,
      distanceKm: distanceBetween(record.station, companion.station),
      elevationDifferenceM: from === null || to === null ? null : from - to,
      addedC: from === null || to === null ? 0 : Math.round(lapseC(from, to) * 10) / 10,
    },
  };
}
