import { assertWithin } from '../../errors.ts';

/** Mean radius of the Earth. [km] */
const EARTH_RADIUS_KM = 6371.0;

/** A point on the Earth: north and east positive. [°] */
export interface GeoPoint {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/**
 * Distance of two points along the surface of a round Earth. [km]
 *
 * Equation   d = 2R·asin √(sin²(Δφ/2) + cos φ1·cos φ2·sin²(Δλ/2))
 * Symbols    φ latitude −90 … 90°, λ longitude −180 … 180°, R = 6371 km
 * Valid      any two points; a round Earth is up to 0.6 % off
 * Source     haversine formula
 * Checked    test/model/greatCircleKm.test.ts
 * @throws {OutOfRangeError} for a latitude or longitude outside its range
 * @example greatCircleKm({ latitudeDeg: 0, longitudeDeg: 0 }, { latitudeDeg: 0, longitudeDeg: 90 }) // 10007.5
 */
export function greatCircleKm(from: GeoPoint, to: GeoPoint): number {
  for (const { latitudeDeg, longitudeDeg } of [from, to]) {
    assertWithin('latitude', latitudeDeg, -90, 90);
    assertWithin('longitude', longitudeDeg, -180, 180);
  }
  const rad = Math.PI / 180;
  const halfLatitude = Math.sin(((to.latitudeDeg - from.latitudeDeg) * rad) / 2);
  const halfLongitude = Math.sin(((to.longitudeDeg - from.longitudeDeg) * rad) / 2);
  const squared =
    halfLatitude ** 2 +
    Math.cos(from.latitudeDeg * rad) * Math.cos(to.latitudeDeg * rad) * halfLongitude ** 2;
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(squared)));
}
