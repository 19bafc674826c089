import { ABSENT } from '../../schema/codes.ts';
import type { StationRecord } from '../../schema/weather.ts';

/** Fall of air temperature with height. [°C per m] */
const LAPSE_C_PER_M = 6.5 / 1000;

/** Change of temperature from one height to another. [°C] */
export const lapseC = (fromElevationM: number, toElevationM: number): number =>
  LAPSE_C_PER_M * (fromElevationM - toElevationM);

/**
 * A station's record with the daily temperatures of a companion station in place of its own.
 *
 * Equation   T = T_companion + 0.0065·(z_companion − z), in whole tenths
 * Symbols    z = height above sea level [m]; where either is unknown nothing is added
 * Valid      days outside the companion's record stay absent and are filled like any gap
 * Source     standard atmosphere, 6.5 °C per km
 * Checked    test/model/ownRecords.test.ts
 */
export function borrowTemperatures(record: StationRecord, companion: StationRecord): StationRecord {
  const from = companion.station.elevationM;
  const to = record.station.elevationM;
  const addTenths = from === null || to === null ? 0 : Math.round(lapseC(from, to) * 10);
  const shift = record.firstDay - companion.firstDay;
  const borrowed = (column: Int32Array): Int32Array => {
    const lent = new Int32Array(record.rainTenthsMm.length).fill(ABSENT);
    const end = Math.min(lent.length, column.length - shift);
    for (let day = Math.max(0, -shift); day < end; day++) {
      const tenths = column[day + shift];
      if (tenths !== ABSENT) lent[day] = tenths + addTenths;
    }
    return lent;
  };
  return {
    ...record,
    maxTempTenthsC: borrowed(companion.maxTempTenthsC),
    minTempTenthsC: borrowed(companion.minTempTenthsC),
  };
}
