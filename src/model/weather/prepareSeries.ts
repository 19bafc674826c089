import { MissingDataError } from '../../errors.ts';
import { ABSENT, RAIN_FILLED } from '../../schema/codes.ts';
import type { DailySeries, StationRecord } from '../../schema/weather.ts';
import { windowMeans } from './calendarMeans.ts';
import { calendarSlots } from './calendarSlot.ts';
import { fillTemperature } from './fillTemperature.ts';
import { spreadMultiDayRain } from './spreadMultiDayRain.ts';

/** Days on each side of a calendar date whose mean rain fills a gap. [d] */
const RAIN_FILL_HALF_WIDTH = 7;

/**
 * Turns a raw record into a gapless daily series with every filled or spread day marked.
 *
 * Rain: multi-day totals spread over the days they cover; other gaps take the mean rain of the calendar
 * days within 7 days of them over all years, never zero. Temperatures: both missing where the maximum is
 * below the minimum; gaps filled by {@link fillTemperature}; where filling leaves the maximum below the
 * minimum both become their mean.
 *
 * @throws {MissingDataError} RECORD_EMPTY without a single rain value; TEMPERATURES_MISSING without temperatures
 */
export function prepareSeries(record: StationRecord): DailySeries {
  const days = record.rainTenthsMm.length;
  const slots = calendarSlots(record.firstDay, days);
  const rainOrigin = new Uint8Array(days);
  const rainMm = fromTenths(record.rainTenthsMm);
  spreadMultiDayRain(rainMm, record.multiDayRainTenthsMm, record.multiDayCount, rainOrigin);
  fillRain(rainMm, slots, rainOrigin, record.station.id);

  const maxTempC = fromTenths(record.maxTempTenthsC);
  const minTempC = fromTenths(record.minTempTenthsC);
  const tempOrigin = new Uint8Array(days);
  dropSwappedTemperatures(maxTempC, minTempC);
  fillTemperature(maxTempC, slots, tempOrigin);
  fillTemperature(minTempC, slots, tempOrigin);
  if (maxTempC.some(Number.isNaN) || minTempC.some(Number.isNaN)) {
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
  };
}

function fromTenths(tenths: Int32Array): Float64Array {
  const values = new Float64Array(tenths.length);
  for (let i = 0; i < tenths.length; i++) values[i] = tenths[i] === ABSENT ? Number.NaN : tenths[i] / 10;
  return values;
}

function fillRain(rainMm: Float64Array, slots: Uint16Array, origin: Uint8Array, stationId: string): void {
  const means = windowMeans(rainMm, slots, RAIN_FILL_HALF_WIDTH);
  for (let day = 0; day < rainMm.length; day++) {
    if (!Number.isNaN(rainMm[day])) {
      continue;
    }
    const mean = means[slots[day]];
    if (Number.isNaN(mean)) {
      throw new MissingDataError(
        'RECORD_EMPTY',
        `The record of ${stationId} has parts of the year without any rain value in any year.`,
        {
          hint: 'Choose a station that measures rain all year round.',
        },
      );
    }
    rainMm[day] = mean;
    origin[day] = RAIN_FILLED;
  }
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
