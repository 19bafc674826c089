import { InvalidInputError } from '../errors.ts';
import type { County } from '../schema/place.ts';
import { findCounty } from './findCounty.ts';
import type { Place } from './nearestStations.ts';

/** A place as a user gives it: latitude and longitude, or a county; the height is optional. */
export interface GivenPlace {
  readonly lat?: number;
  readonly lon?: number;
  readonly county?: string;
  /** Height above sea level [m]. */
  readonly elevation?: number;
}

/**
 * The place that a user gave, either way.
 * @param hint how to give it at this door
 * @throws {InvalidInputError} PLACE_MISSING where it is neither, or both; those of {@link findCounty}
 */
export async function soughtPlace(
  { lat, lon, county, elevation }: GivenPlace,
  counties: () => Promise<readonly County[]>,
  hint: string,
): Promise<Place> {
  if (county !== undefined && lat === undefined && lon === undefined) {
    const { fullName, latitudeDeg, longitudeDeg } = findCounty(await counties(), county);
    return { name: fullName, latitudeDeg, longitudeDeg, elevationM: elevation };
  }
  if (county === undefined && lat !== undefined && lon !== undefined) {
    return { latitudeDeg: lat, longitudeDeg: lon, elevationM: elevation };
  }
  throw new InvalidInputError(
    'PLACE_MISSING',
    county === undefined
      ? 'A place needs latitude and longitude, or a county.'
      : 'A place is either a county or latitude and longitude, not both.',
    { hint },
  );
}
