import { assertWithin } from '../../errors.ts';

/** Gas constant. [kJ mol-1 K-1] */
const GAS_CONSTANT_KJ = 0.008314;

/** 0 °C on the absolute scale. [K] */
const FREEZING_K = 273.15;

/**
 * Speed of breakdown in soil relative to 20 °C by the exponential law of reaction rates; 0 in frozen soil. [–]
 *
 * Equation   f_T = exp[−(Ea/R) (1/(T + 273.15) − 1/293.15)] for T > 0 °C, else 0
 * Symbols    soilTempC = T, soil temperature [°C], −40 to 60
 *            activationEnergyKjPerMol = Ea [kJ mol-1], 0 to 200; R = 0.008314 kJ mol-1 K-1
 * Valid      0 to 30 °C; for comparison with {@link temperatureResponse}, from which it differs except at
 *            10 and 20 °C when Ea 65.4 stands beside Q10 2.58; outside the ranges -> OutOfRangeError
 * Source     EFSA opinion on the default Q10 (2007); Ea 65.4 from memory
 * Checked    test/published/temperature-response.json
 * @example   arrheniusResponse(10, 65.4) // 0.3876
 */
export function arrheniusResponse(soilTempC: number, activationEnergyKjPerMol: number): number {
  assertWithin('soilTempC', soilTempC, -40, 60);
  assertWithin('activationEnergyKjPerMol', activationEnergyKjPerMol, 0, 200);
  if (soilTempC <= 0) return 0;
  const inverseDifference = 1 / (soilTempC + FREEZING_K) - 1 / (20 + FREEZING_K);
  return Math.exp(-(activationEnergyKjPerMol / GAS_CONSTANT_KJ) * inverseDifference);
}
