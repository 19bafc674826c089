import { directionTo } from '../model/place/directionTo.ts';
import { greatCircleKm } from '../model/place/greatCircleKm.ts';
import type { StationCheck } from '../schema/stationCheck.ts';
import type { Station, StationRecord } from '../schema/weather.ts';

type Spot = Pick<Station, 'latitudeDeg' | 'longitudeDeg' | 'elevationM'>;

/** Positions that earlier sources gave otherwise, each with the way to the one that came after it; oldest first. Pure. */
export const stationMoves = ({
  station,
  formerPlaces = [],
}: StationRecord): StationCheck['changes']['formerPositions'] =>
  formerPlaces.map((place, index) => ({ ...place, ...wayTo(place, formerPlaces[index + 1] ?? station) }));

function wayTo(
  from: Spot,
  to: Spot,
): Pick<StationCheck['changes']['formerPositions'][number], 'movedKm' | 'movedTowards' | 'raisedM'> {
  const [start, end] = [pointOf(from), pointOf(to)];
  const movedKm = start && end && greatCircleKm(start, end);
  return {
    movedKm,
    movedTowards: start && end && movedKm !== 0 ? directionTo(start, end) : null,
    raisedM: from.elevationM === null || to.elevationM === null ? null : to.elevationM - from.elevationM,
  };
}

const pointOf = ({ latitudeDeg, longitudeDeg }: Spot) =>
  latitudeDeg === null || longitudeDeg === null ? null : { latitudeDeg, longitudeDeg };
