import type { StationCheck } from '../schema/stationCheck.ts';
import { METRES_PER_FOOT } from '../units.ts';

const METRES_PER_MILE = 5280 * METRES_PER_FOOT;

/** Less than this is no way worth telling: a rounding of the fourth decimal. [km] */
const LEAST_KM = 0.02;

/** A change of position in words: "0.8 mi (1.3 km) north-east and 39 ft (12 m) higher, by stations.txt". */
export function moveText({
  movedKm,
  movedTowards,
  raisedM,
  replacedBy,
}: StationCheck['changes']['formerPositions'][number]): string {
  const way =
    movedKm === null
      ? 'from or to a place not known'
      : movedKm < LEAST_KM || movedTowards === null
        ? 'hardly any way'
        : `${miles(movedKm)} ${movedTowards}`;
  const height =
    raisedM === null
      ? 'height not known before or after'
      : Math.abs(raisedM) < 0.5
        ? 'at the same height'
        : `${Math.round(Math.abs(raisedM) / METRES_PER_FOOT)} ft (${Math.abs(raisedM).toFixed(0)} m) ${raisedM > 0 ? 'higher' : 'lower'}`;
  return `${way}, ${height}, by ${replacedBy}`;
}

const miles = (km: number): string => {
  const digits = (value: number) => (value < 10 ? value.toFixed(2) : value.toFixed(0));
  return `${digits((km * 1000) / METRES_PER_MILE)} mi (${digits(km)} km)`;
};
