import { parseIsoDate } from '../calendar.ts';
import { greatCircleKm } from '../model/place/greatCircleKm.ts';
import type { Station, StationExtent } from '../schema/weather.ts';

/** A station at a distance. */
export interface StationNear {
  readonly station: StationExtent;
  readonly distanceKm: number;
}

/** Farthest that temperatures are borrowed from. [km] */
const FARTHEST_TEMPERATURE_KM = 100;
/** Days with both temperatures that make twenty years. [d] */
const LEAST_TEMPERATURE_DAYS = 20 * 365;
/** Share of the borrowing record's days that the companion's record must span. [0-1] */
const LEAST_SHARED = 0.5;

/** Farthest that rain is filled from. [km] */
const FARTHEST_RAIN_KM = 50;
/** Most stations that rain is filled from. */
const MOST_RAIN_STATIONS = 4;
/** Days of rain that a neighbour must have on the station's own days. [d] */
const LEAST_RAIN_DAYS = 3650;

/** Day numbers of a record's first and last day. */
export interface RecordSpan {
  readonly firstDay: number;
  readonly lastDay: number;
}

/**
 * The station that temperatures are borrowed from: the nearest within 100 km with twenty years of them whose
 * record spans at least half of the borrower's. Null where there is none or the borrower's position is unknown.
 */
export function companionStation(
  borrower: Station,
  span: RecordSpan,
  stations: readonly StationExtent[],
): StationNear | null {
  const half = LEAST_SHARED * (span.lastDay - span.firstDay + 1);
  return (
    stationsAround(borrower, stations).find(
      ({ station, distanceKm }) =>
        distanceKm <= FARTHEST_TEMPERATURE_KM &&
        station.temperatureDays >= LEAST_TEMPERATURE_DAYS &&
        sharedDays(span, station) >= half,
    ) ?? null
  );
}

/**
 * The stations that rain gaps are filled from: the nearest four within 50 km that measured rain on at least
 * 3650 days and whose record runs beside the station's for as long. Nearest first.
 */
export function rainNeighbours(
  station: Station,
  span: RecordSpan,
  stations: readonly StationExtent[],
): StationNear[] {
  return stationsAround(station, stations)
    .filter(
      (near) =>
        near.distanceKm <= FARTHEST_RAIN_KM &&
        near.station.rainDays >= LEAST_RAIN_DAYS &&
        sharedDays(span, near.station) >= LEAST_RAIN_DAYS,
    )
    .slice(0, MOST_RAIN_STATIONS);
}

/** Distance of two stations [km]; null where a position is unknown. */
export function distanceBetween(a: Station, b: Station): number | null {
  if (a.latitudeDeg === null || a.longitudeDeg === null) return null;
  if (b.latitudeDeg === null || b.longitudeDeg === null) return null;
  return greatCircleKm(
    { latitudeDeg: a.latitudeDeg, longitudeDeg: a.longitudeDeg },
    { latitudeDeg: b.latitudeDeg, longitudeDeg: b.longitudeDeg },
  );
}

/** Every other real station with a position, nearest first. */
function stationsAround(station: Station, stations: readonly StationExtent[]): StationNear[] {
  const near: StationNear[] = [];
  for (const other of stations) {
    const distanceKm = distanceBetween(station, other);
    if (distanceKm === null || other.id === station.id || other.invented) continue;
    near.push({ station: other, distanceKm });
  }
  return near.sort((a, b) => a.distanceKm - b.distanceKm || (a.station.id < b.station.id ? -1 : 1));
}

/** Days from first to last that both records span. [d] */
function sharedDays({ firstDay, lastDay }: RecordSpan, other: StationExtent): number {
  const from = Math.max(firstDay, parseIsoDate(other.firstDate));
  const to = Math.min(lastDay, parseIsoDate(other.lastDate));
  return Math.max(0, to - from + 1);
}
