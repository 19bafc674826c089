/**
 * Snow that melts on a day, as water. [mm]
 *
 * Equation   T <= 0: 0, and what falls stays as snow;   T > 0: min(S, m·T)
 * Symbols    S = snowMm, snow water at the start of the day [mm], >= 0
 *            T = meanTempC, mean air temperature of the day [°C]
 *            m = meltMmPerDegreeDay [mm/(°C d)], 2.74 by default
 * Valid      inner loop, inputs not checked; the degree-day form is meant for open ground
 * Source     USDA-NRCS, National Engineering Handbook part 630, chapter 11 (2.74 mm per °C and day, from memory)
 * Checked    test/model/snowMelt.test.ts (water balance)
 * @example snowMelt(10, 2, 2.74) // 5.48
 */
export function snowMelt(snowMm: number, meanTempC: number, meltMmPerDegreeDay: number): number {
  const wanted = meltMmPerDegreeDay * meanTempC;
  if (meanTempC <= 0) return 0;
  return Math.min(wanted, snowMm);
}
