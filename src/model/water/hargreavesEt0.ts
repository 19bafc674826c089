import { MM_PER_MEGAJOULE } from '../../units.ts';

/**
 * Reference evapotranspiration of a day from its temperatures alone, not below 0. [mm d-1]
 *
 * Equation   ET0 = 0.0023 (Tmean + 17.8) √(Tmax − Tmin) · 0.408 Ra, with Tmean = (Tmax + Tmin)/2
 * Symbols    maxTempC = Tmax, minTempC = Tmin, air temperatures of the day [°C], Tmax ≥ Tmin
 *            extraterrestrialMj = Ra, radiation above the atmosphere [MJ m-2 d-1], at least 0
 * Valid      sums over several days; too low in wind above 3 m/s, too high in humid air. Runs once per
 *            station day, so the ranges are not checked: Tmax below Tmin gives NaN
 * Source     FAO-56 eq. 52 (Hargreaves); eq. 20 for 0.408
 * Checked    test/published/et0.json
 * @example   hargreavesEt0(26.6, 14.8, 40.55) // 5.0325
 */
export function hargreavesEt0(maxTempC: number, minTempC: number, extraterrestrialMj: number): number {
  const meanTempC = (maxTempC + minTempC) / 2;
  const et0 =
    0.0023 * (meanTempC + 17.8) * Math.sqrt(maxTempC - minTempC) * MM_PER_MEGAJOULE * extraterrestrialMj;
  return Math.max(0, et0);
}
