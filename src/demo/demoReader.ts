import type { WeatherReader } from '../app/weatherReader.ts';
import { MissingDataError } from '../errors.ts';
import type { StationExtent, StationRecord } from '../schema/weather.ts';
import { DEMO_FIRST_DATE, DEMO_LAST_DATE, DEMO_STATION, inventedRecord } from './inventedRecord.ts';

/**
 * Reads the one invented station; its record is made at the first call that needs it and then kept; each call gets a
 * copy of its own. Another station -> MissingDataError STATION_UNKNOWN.
 * @example (await createDemoReader().stations())[0].id // 'demo-invented'
 */
export function createDemoReader(): WeatherReader {
  let kept: StationRecord | undefined;
  function demoRecord(): StationRecord {
    kept ??= inventedRecord();
    return kept;
  }

  return {
    async stations(): Promise<readonly StationExtent[]> {
      const record = demoRecord();
      return [
        {
          ...DEMO_STATION,
          firstDate: DEMO_FIRST_DATE,
          lastDate: DEMO_LAST_DATE,
          rainDays: record.rainTenthsMm.length,
          temperatureDays: record.maxTempTenthsC.length,
          source: record.source,
        },
      ];
    },
    async record(stationId: string): Promise<StationRecord> {
      if (stationId !== DEMO_STATION.id) {
        throw new MissingDataError('STATION_UNKNOWN', `The demo has no station "${stationId}".`, {
          hint: `Its only station is "${DEMO_STATION.id}"; give weather files or import a station for others.`,
          details: { station: stationId, stations: [DEMO_STATION.id] },
        });
      }
      return copyOf(demoRecord());
    },
  };
}

/** A record of one's own: who asked may hand its columns on to a worker, which takes them away. */
const copyOf = (record: StationRecord): StationRecord => ({
  ...record,
  rainTenthsMm: record.rainTenthsMm.slice(),
  maxTempTenthsC: record.maxTempTenthsC.slice(),
  minTempTenthsC: record.minTempTenthsC.slice(),
  multiDayRainTenthsMm: record.multiDayRainTenthsMm.slice(),
  multiDayCount: record.multiDayCount.slice(),
});
