import { assertWithin } from '../../errors.ts';
import { inverseRelativeDistance } from './inverseRelativeDistance.ts';
import { solarDeclination } from './solarDeclination.ts';
import { sunsetHourAngle } from './sunsetHourAngle.ts';

/** Solar constant as FAO-56 uses it. [MJ m-2 min-1] */
const SOLAR_CONSTANT_MJ_PER_MINUTE = 0.082;

/**
 * Solar energy that reaches a level surface at the top of the atmosphere in one day. [MJ m-2 d-1]
 *
 * Equation   Ra = (24·60 / π) · 0.0820 · d_r · [ω_s sin φ sin δ + cos φ cos δ sin ω_s]
 * Symbols    latitudeDeg = φ, latitude, north positive [°], −90 to 90
 *            dayOfYear = J, day of the year [–], 1 to 366, from which d_r, δ and ω_s follow
 * Valid      all latitudes and days; outside the ranges -> OutOfRangeError
 * Source     FAO-56 eq. 21 to 25
 * Checked    test/published/radiation.json
 * @example   extraterrestrialRadiation(-20, 246) // 32.1940
 */
export function extraterrestrialRadiation(latitudeDeg: number, dayOfYear: number): number {
  assertWithin('latitudeDeg', latitudeDeg, -90, 90);
  const latitude = (latitudeDeg * Math.PI) / 180;
  const declination = solarDeclination(dayOfYear);
  const sunset = sunsetHourAngle(latitude, declination);
  const geometry =
    sunset * Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset);
  const radiation =
    ((24 * 60) / Math.PI) * SOLAR_CONSTANT_MJ_PER_MINUTE * inverseRelativeDistance(dayOfYear) * geometry;
  return Math.max(0, radiation);
}
