/**
 * Snow water left at the end of a day. [mm]
 *
 * Equation   T <= 0: S + P;   T > 0: S − min(S, m·T)
 * Symbols    S = snowMm, snow water at the start of the day [mm], >= 0
 *            P = rainMm, precipitation of the day [mm], >= 0
 *            T = meanTempC, mean air temperature of the day [°C]
 *            m = meltMmPerDegreeDay [mm/(°C d)], 2.74 by default
 * Valid      inner loop, inputs not checked; the degree-day form is meant for open ground
 * Source     USDA-NRCS, National Engineering Handbook part 630, chapter 11 (2.74 mm per °C and day, from memory)
 * Checked    test/model/snowDay.test.ts (water balance)
 * @example snowLeft(10, 4, 2, 2.74) // 4.52
 */
export function snowLeft(
  snowMm: number,
  rainMm: number,
  meanTempC: number,
  meltMmPerDegreeDay: number,
): number {
  return meanTempC <= 0 ? snowMm + rainMm : snowMm - Math.min(snowMm, meltMmPerDegreeDay * meanTempC);
}
