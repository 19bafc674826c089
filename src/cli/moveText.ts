import { sayIn } from '../app/say.ts';
import type { Units } from '../quantities.ts';
import type { StationCheck } from '../schema/stationCheck.ts';
import { METRES_PER_FOOT } from '../units.ts';

const METRES_PER_MILE = 5280 * METRES_PER_FOOT;

/** Less than this is no way worth telling: a rounding of the fourth decimal. [km] */
const LEAST_KM = 0.02;

/** A change of position in words: "0.81 mi north-east, 39 ft higher, by stations.txt". */
export function moveText(
  { movedKm, movedTowards, raisedM, replacedBy }: StationCheck['changes']['formerPositions'][number],
  units: Units,
): string {
  const way =
    movedKm === null
      ? 'from or to a place not known'
      : movedKm < LEAST_KM || movedTowards === null
        ? 'hardly any way'
        : `${wayWords(movedKm, units)} ${movedTowards}`;
  const height =
    raisedM === null
      ? 'height not known before or after'
      : Math.abs(raisedM) < 0.5
        ? 'at the same height'
        : `${sayIn({ units }).height(Math.abs(raisedM))} ${raisedM > 0 ? 'higher' : 'lower'}`;
  return `${way}, ${height}, by ${replacedBy}`;
}

/** A way over land, near ones to the hundredth: "0.81 mi", "12 km". */
export function wayWords(km: number, units: Units): string {
  const way = units === 'us' ? (km * 1000) / METRES_PER_MILE : km;
  return `${way < 10 ? way.toFixed(2) : way.toFixed(0)} ${units === 'us' ? 'mi' : 'km'}`;
}
