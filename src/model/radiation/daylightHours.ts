import { assertWithin } from '../../errors.ts';

/**
 * Longest possible sunshine of a day, sunrise to sunset over a flat horizon. [h]
 *
 * Equation   N = (24 / π) ω_s
 * Symbols    sunsetHourAngleRad = ω_s, sunset hour angle [rad], 0 to π
 * Valid      0 to π; outside -> OutOfRangeError
 * Source     FAO-56 eq. 34
 * Checked    test/published/radiation.json
 * @example   daylightHours(1.527022) // 11.6656
 */
export function daylightHours(sunsetHourAngleRad: number): number {
  assertWithin('sunsetHourAngleRad', sunsetHourAngleRad, 0, Math.PI);
  return (24 / Math.PI) * sunsetHourAngleRad;
}
