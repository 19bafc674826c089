import { LEAST_YEARS } from '../analysis/historicalYears.ts';
import { parseIsoDate } from '../calendar.ts';
import { type GeoPoint, greatCircleKm } from '../model/place/greatCircleKm.ts';
import type { NearestStations } from '../schema/place.ts';
import type { StationExtent } from '../schema/weather.ts';
import { NEUTRAL, type Say } from './say.ts';

/** Days in a mean year. [d] */
const YEAR_DAYS = 365.25;

/**
 * What counts against a station, all as if it lay that much farther away. Our own weights, shown with every answer:
 * 100 m of height as 10 km, a year under thirty as 4 km, a per cent of missing rain as 3 km, no temperatures as 40 km
 * (they would be borrowed), a year since its last day as 3 km up to 60 km.
 */
export const STATION_WEIGHTS = {
  kmPerMetre: 1 / 10,
  wantedYears: 30,
  kmPerYearShort: 4,
  kmPerMissingPercent: 3,
  kmWithoutTemperatures: 40,
  kmPerYearEnded: 3,
  mostKmEnded: 60,
} as const;

/** Stations listed where nothing else is said. */
const LISTED = 10;
/** Farthest that a station is suggested from. [km] */
const FARTHEST_KM = 150;

type RatedStation = NearestStations['stations'][number];

/** A point with what is known of it. */
export interface Place extends GeoPoint {
  readonly name?: string;
  readonly elevationM?: number;
}

/**
 * Stations around a place, nearest first, and the one to take: the least total of {@link STATION_WEIGHTS} among those
 * with ten years of rain within 150 km. How long ago a record ended is counted from the latest last day of all
 * stations, so that no clock is needed. Invented stations never take part. Pure.
 *
 * @param most stations listed; the suggested one is always among them
 * @param say the way to say distances and heights
 * @throws {OutOfRangeError} for a latitude or longitude outside its range
 */
export function nearestStations(
  stations: readonly StationExtent[],
  place: Place,
  most: number = LISTED,
  say: Say = NEUTRAL,
): NearestStations {
  const real = stations.filter(({ invented }) => !invented);
  const latestDay = Math.max(...real.map(({ lastDate }) => parseIsoDate(lastDate)));
  const rated = real
    .map((station) => rate(station, place, latestDay))
    .filter((station) => station !== null)
    .sort((a, b) => a.distanceKm - b.distanceKm || (a.id < b.id ? -1 : 1));
  const [best] = rated
    .filter(({ years, distanceKm }) => years >= LEAST_YEARS && distanceKm <= FARTHEST_KM)
    .sort((a, b) => a.cost.totalKm - b.cost.totalKm || a.distanceKm - b.distanceKm);
  const shown = rated.slice(0, most);
  if (best && !shown.includes(best)) shown.splice(-1, 1, best);
  return {
    place: {
      name: place.name ?? null,
      latitudeDeg: place.latitudeDeg,
      longitudeDeg: place.longitudeDeg,
      elevationM: place.elevationM ?? null,
    },
    suggested: best?.id ?? null,
    reason: reasonFor(best, rated, say),
    stations: shown,
    withoutPosition: real.length - rated.length,
  };
}

function rate(station: StationExtent, place: Place, latestDay: number): RatedStation | null {
  const { latitudeDeg, longitudeDeg, elevationM, firstDate, lastDate, rainDays, temperatureDays } = station;
  if (latitudeDeg === null || longitudeDeg === null) return null;
  const distanceKm = greatCircleKm(place, { latitudeDeg, longitudeDeg });
  const days = parseIsoDate(lastDate) - parseIsoDate(firstDate) + 1;
  const years = rainDays / YEAR_DAYS;
  const hasTemperatures = temperatureDays / YEAR_DAYS >= LEAST_YEARS;
  const elevationDifferenceM =
    elevationM === null || place.elevationM === undefined ? null : elevationM - place.elevationM;
  const w = STATION_WEIGHTS;
  const parts = {
    distanceKm,
    elevationKm: w.kmPerMetre * Math.abs(elevationDifferenceM ?? 0),
    shortRecordKm: w.kmPerYearShort * Math.max(0, w.wantedYears - years),
    gapsKm: w.kmPerMissingPercent * 100 * (1 - rainDays / days),
    temperaturesKm: hasTemperatures ? 0 : w.kmWithoutTemperatures,
    endedKm: Math.min(w.mostKmEnded, (w.kmPerYearEnded * (latestDay - parseIsoDate(lastDate))) / YEAR_DAYS),
  };
  return {
    ...station,
    distanceKm,
    elevationDifferenceM,
    years,
    rainPercent: (rainDays / days) * 100,
    temperaturePercent: (temperatureDays / days) * 100,
    elements: [
      ...(rainDays > 0 ? (['rain'] as const) : []),
      ...(temperatureDays > 0 ? (['temperatures'] as const) : []),
    ],
    cost: { ...parts, totalKm: Object.values(parts).reduce((sum, km) => sum + km, 0) },
  };
}

function reasonFor(best: RatedStation | undefined, rated: readonly RatedStation[], say: Say): string {
  if (!best) {
    return rated.length === 0
      ? 'No station with a known position is to be had; import some, with the station list.'
      : `No station within ${say.distance(FARTHEST_KM)} has ${LEAST_YEARS} years of rain; import more stations.`;
  }
  const height =
    best.elevationDifferenceM === null
      ? ''
      : `, ${say.height(Math.abs(best.elevationDifferenceM))} ${best.elevationDifferenceM < 0 ? 'lower' : 'higher'}`;
  const facts = `${best.name} is ${say.distance(best.distanceKm)} away${height}, has ${Math.floor(best.years)} years of rain with ${(100 - best.rainPercent).toFixed(1)} % missing${
    best.cost.temperaturesKm > 0 ? ', and would borrow temperatures' : ''
  }`;
  const [nearest] = rated;
  if (nearest.id === best.id) return `${facts}: the nearest.`;
  const [[against]] = Object.entries(nearest.cost)
    .filter(([part]) => part !== 'totalKm' && part !== 'distanceKm')
    .map(([part, km]) => [part, km - best.cost[part as keyof RatedStation['cost']]] as const)
    .sort(([, a], [, b]) => b - a);
  return `${facts}. The nearest, ${nearest.name} at ${say.distance(nearest.distanceKm)}, ${AGAINST[against]}.`;
}

/** What speaks against a nearer station, by the part of its cost that is larger. */
const AGAINST: Readonly<Record<string, string>> = {
  elevationKm: 'lies at a less similar height',
  shortRecordKm: 'has a shorter record',
  gapsKm: 'misses more of its days',
  temperaturesKm: 'has no ten years of temperatures',
  endedKm: 'ended earlier',
};
