/**
 * Speed of breakdown in soil relative to 20 °C; 0 in frozen soil. [–]
 *
 * Equation   f_T = Q10^((T − 20)/10) for T > 0 °C, else 0
 * Symbols    soilTempC = T, soil temperature [°C], −40 to 60
 *            q10 = Q10, factor for 10 °C more [–], 1 to 5; 2.58 unless the active has its own
 * Valid      0 to 30 °C. Runs once per day of the breakdown sum, so the ranges are not checked
 * Source     EFSA opinion on the default Q10 (2007) for 2.58, replacing 2.2; no breakdown at or below 0 °C
 *            is usual practice (from memory)
 * Checked    test/published/temperature-response.json
 * @example   temperatureResponse(10, 2.58) // 0.3876
 */
export function temperatureResponse(soilTempC: number, q10: number): number {
  return soilTempC <= 0 ? 0 : q10 ** ((soilTempC - 20) / 10);
}
