import { assertWithin } from '../../errors.ts';

/**
 * Hour angle between solar noon and sunset: 0 in polar night, π in polar day. [rad]
 *
 * Equation   ω_s = arccos(−tan φ · tan δ), the argument kept in −1 … 1
 * Symbols    latitudeRad = φ, latitude, north positive [rad], −π/2 to π/2
 *            declinationRad = δ, solar declination [rad], −0.41 to 0.41
 * Valid      all latitudes, the poles included; outside the ranges -> OutOfRangeError
 * Source     FAO-56 eq. 25; the clamp gives polar day and night their limits
 * Checked    test/published/radiation.json
 * @example   sunsetHourAngle(-0.349066, 0.119655) // 1.527022
 */
export function sunsetHourAngle(latitudeRad: number, declinationRad: number): number {
  assertWithin('latitudeRad', latitudeRad, -Math.PI / 2, Math.PI / 2);
  assertWithin('declinationRad', declinationRad, -0.41, 0.41);
  const cosine = -Math.tan(latitudeRad) * Math.tan(declinationRad);
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}
