import { MissingDataError } from '../../errors.ts';
import type { DailySeries, StationRecord } from '../../schema/weather.ts';
import type { Columns } from '../run/columns.ts';
import { filledRain, type OtherRain } from './filledRain.ts';
import { fillTemperature } from './fillTemperature.ts';
import { hasGap } from './hasGap.ts';
import { valuesFromTenths } from './rainOfRecord.ts';

/** A daily series with what neighbours did for it. */
export interface PreparedSeries extends DailySeries {
  /** Days that each neighbour helped to fill, in the order given [d]. */
  readonly neighbourDays: readonly number[];
}

/**
 * Turns a raw record into a gapless daily series with every filled or spread day marked. [mm; °C], an entry a day.
 *
 * Rain by {@link filledRain}. Temperatures: both missing where the maximum is
 * below the minimum; gaps filled by {@link fillTemperature}; where filling leaves the maximum below the
 * minimum both become their mean.
 *
 * @throws {MissingDataError} RECORD_EMPTY without a single rain value; TEMPERATURES_MISSING without temperatures
 * @example prepareSeries(record).rainMm.length // 21915
 */
export function prepareSeries(
  record: StationRecord,
  otherRain?: OtherRain,
  columns?: Columns,
): PreparedSeries {
  const days = record.rainTenthsMm.length;
  const { rainMm, origin: rainOrigin, neighbourDays } = filledRain(record, otherRain, columns);

  const maxTempC = valuesFromTenths(record.maxTempTenthsC, columns);
  const minTempC = valuesFromTenths(record.minTempTenthsC, columns);
  const tempOrigin = new Uint8Array(days);
  dropSwappedTemperatures(maxTempC, minTempC);
  fillTemperature(maxTempC, record.firstDay, tempOrigin);
  fillTemperature(minTempC, record.firstDay, tempOrigin);
  if (hasGap(maxTempC) || hasGap(minTempC)) {
    throw new MissingDataError(
      'TEMPERATURES_MISSING',
      `The record of ${record.station.id} holds no usable daily temperatures, so warmth in the soil cannot be worked out.`,
      { hint: 'Choose a station that also measures maximum and minimum temperature.' },
    );
  }
  settleSwappedTemperatures(maxTempC, minTempC);
  return {
    station: record.station,
    firstDay: record.firstDay,
    days,
    rainMm,
    maxTempC,
    minTempC,
    rainOrigin,
    tempOrigin,
    neighbourDays,
  };
}

function dropSwappedTemperatures(maxTempC: Float64Array, minTempC: Float64Array): void {
  for (let day = 0; day < maxTempC.length; day++) {
    if (maxTempC[day] < minTempC[day]) {
      maxTempC[day] = Number.NaN;
      minTempC[day] = Number.NaN;
    }
  }
}

function settleSwappedTemperatures(maxTempC: Float64Array, minTempC: Float64Array): void {
  for (let day = 0; day < maxTempC.length; day++) {
    if (maxTempC[day] < minTempC[day]) {
      const mean = (maxTempC[day] + minTempC[day]) / 2;
      maxTempC[day] = mean;
      minTempC[day] = mean;
    }
  }
}
