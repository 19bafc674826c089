/**
 * Share of the full evaporation rate that a drying top layer still allows, 0 to 1. [–]
 *
 * Equation   K_r = 1 if D ≤ REW, else (TEW − D)/(TEW − REW), not below 0
 * Symbols    depletionMm = D, water missing from field capacity [mm], 0 to TEW
 *            tewMm = TEW, total evaporable water [mm], above 0
 *            rewMm = REW, readily evaporable water [mm], 0 to TEW
 * Valid      bare soil. Runs once per day of the water recursion, so the ranges are not checked;
 *            D at or above TEW gives 0, also where REW equals TEW
 * Source     FAO-56 eq. 74
 * Checked    test/published/evaporation.json
 * @example   evaporationReduction(13.98, 20, 9) // 0.547
 */
export function evaporationReduction(depletionMm: number, tewMm: number, rewMm: number): number {
  if (depletionMm <= rewMm) return 1;
  if (depletionMm >= tewMm) return 0;
  return (tewMm - depletionMm) / (tewMm - rewMm);
}
