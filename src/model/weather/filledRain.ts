import { MissingDataError } from '../../errors.ts';
import { RAIN_FILLED } from '../../schema/codes.ts';
import type { StationRecord } from '../../schema/weather.ts';
import type { Columns } from '../run/columns.ts';
import { windowMeans } from './calendarMeans.ts';
import { calendarSlots } from './calendarSlot.ts';
import { hasGap } from './hasGap.ts';
import { fillFromNeighbours, type NeighbourRain } from './neighbourRain.ts';
import { applyOwnGauge, type OwnAmount } from './ownRecords.ts';
import { rainOfRecord } from './rainOfRecord.ts';

/** Days on each side of a calendar date whose mean rain fills a gap. [d] */
const RAIN_FILL_HALF_WIDTH = 7;

/** Gapless daily rain with the origin of every day. */
export interface DailyRain {
  readonly firstDay: number;
  /** Daily rain [mm]. */
  readonly rainMm: Float64Array;
  /** RAIN_OBSERVED, RAIN_SPREAD, RAIN_FILLED, RAIN_NEIGHBOUR or RAIN_GAUGE per day. */
  readonly origin: Uint8Array;
}

/** Rain beside the station's own record. */
export interface OtherRain {
  /** Neighbouring stations that fill gaps where they can, nearest first. */
  readonly neighbours?: readonly NeighbourRain[];
  /** The grower's own gauge, which wins over the station on its days. */
  readonly gauge?: readonly OwnAmount[];
}

/**
 * Daily rain of a record without gaps, every day marked. [mm]
 *
 * Multi-day totals are spread over the days they cover; then, where given, gaps are filled from neighbours and the
 * own gauge is put over the station; other gaps take the mean rain of the calendar days within 7 days of them over
 * all years of the station's own values, never zero.
 *
 * @returns with it, the days that each neighbour helped to fill, in the order given [d]
 * @throws {MissingDataError} RECORD_EMPTY where a part of the year has no rain value in any year
 */
export function filledRain(
  record: StationRecord,
  { neighbours = [], gauge = [] }: OtherRain = {},
  columns?: Columns,
): DailyRain & { readonly neighbourDays: readonly number[] } {
  const { firstDay, station } = record;
  const { rainMm, origin } = rainOfRecord(record, columns);
  // The means are the station's own: taken before neighbours and gauge come in, and only where a day is missing.
  const calendar = hasGap(rainMm) ? calendarOf(rainMm, firstDay) : null;
  const neighbourDays = neighbours.length > 0 ? fillFromNeighbours(rainMm, origin, firstDay, neighbours) : [];
  applyOwnGauge(rainMm, origin, firstDay, gauge);
  if (calendar !== null) fillWithMeans(rainMm, origin, calendar, station.id);
  return { firstDay, rainMm, origin, neighbourDays };
}

/** Calendar slot of each day, and mean rain around each slot [mm]. */
interface Calendar {
  readonly slots: Uint16Array;
  readonly means: Float64Array;
}

function calendarOf(rainMm: Float64Array, firstDay: number): Calendar {
  const slots = calendarSlots(firstDay, rainMm.length);
  return { slots, means: windowMeans(rainMm, slots, RAIN_FILL_HALF_WIDTH) };
}

function fillWithMeans(
  rainMm: Float64Array,
  origin: Uint8Array,
  { slots, means }: Calendar,
  stationId: string,
): void {
  for (let day = 0; day < rainMm.length; day++) {
    if (!Number.isNaN(rainMm[day])) continue;
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
