import { isoDateOf } from '../calendar.ts';
import { ABSENT } from '../schema/codes.ts';
import type { StationExtent, StationRecord } from '../schema/weather.ts';

/** The station of a record with the record's extent, as lists show it. */
export function stationExtent(record: StationRecord): StationExtent {
  const { rainTenthsMm, maxTempTenthsC, minTempTenthsC } = record;
  let rainDays = 0;
  let temperatureDays = 0;
  for (let i = 0; i < rainTenthsMm.length; i++) {
    if (rainTenthsMm[i] !== ABSENT) rainDays++;
    if (maxTempTenthsC[i] !== ABSENT && minTempTenthsC[i] !== ABSENT) temperatureDays++;
  }
  return {
    ...record.station,
    firstDate: isoDateOf(record.firstDay),
    lastDate: isoDateOf(record.firstDay + rainTenthsMm.length - 1),
    rainDays,
    temperatureDays,
    source: record.source,
  };
}
