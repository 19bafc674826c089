import type { GeoPoint } from './greatCircleKm.ts';

/** The eight points of the compass, from north through east. */
export const COMPASS_POINTS = [
  ...(['north', 'north-east', 'east', 'south-east'] as const),
  ...(['south', 'south-west', 'west', 'north-west'] as const),
] as const;
export type CompassPoint = (typeof COMPASS_POINTS)[number];

/**
 * The point of the compass nearest to the way from one point to another, as one sets out.
 *
 * Equation   θ = atan2(sin Δλ·cos φ2, cos φ1·sin φ2 − sin φ1·cos φ2·cos Δλ)
 * Symbols    φ latitude −90 … 90°, λ longitude −180 … 180°, θ bearing from north through east
 * Valid      two different points; for one and the same it is north
 * Source     initial bearing of a great circle
 * Checked    test/model/directionTo.test.ts
 * @example directionTo({ latitudeDeg: 45, longitudeDeg: -110 }, { latitudeDeg: 45, longitudeDeg: -109 }) // 'east'
 */
export function directionTo(from: GeoPoint, to: GeoPoint): CompassPoint {
  const rad = Math.PI / 180;
  const turn = (to.longitudeDeg - from.longitudeDeg) * rad;
  const [start, end] = [from.latitudeDeg * rad, to.latitudeDeg * rad];
  const east = Math.sin(turn) * Math.cos(end);
  const north = Math.cos(start) * Math.sin(end) - Math.sin(start) * Math.cos(end) * Math.cos(turn);
  const eighths = Math.round(Math.atan2(east, north) / (Math.PI / 4));
  return COMPASS_POINTS[(eighths + 8) % 8];
}
