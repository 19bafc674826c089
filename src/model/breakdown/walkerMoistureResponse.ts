import { assertWithin, OutOfRangeError } from '../../errors.ts';

/**
 * Speed of breakdown in soil relative to a reference moisture, not above 1. [–]
 *
 * Equation   f_W = min{1, (θ/θ_ref)^B}
 * Symbols    theta = θ, water content, at least 0; thetaReference = θ_ref, water content at the reference
 *            (pF 2), above 0; both by volume or both by mass [m3 m-3 or %]
 *            exponent = B [–], 0 to 3, default 0.7
 * Valid      between wilting point and the reference; outside the ranges -> OutOfRangeError
 * Source     Journal of Environmental Quality 3, 396-401 (1974) (citation from memory); B 0.7 as in the
 *            FOCUS guidance
 * Checked    test/published/moisture-response.json, test/published/normalisation.json
 * @example   walkerMoistureResponse(20, 25) // 0.8554
 */
export function walkerMoistureResponse(theta: number, thetaReference: number, exponent = 0.7): number {
  assertWithin('theta', theta, 0, Number.POSITIVE_INFINITY);
  if (!(thetaReference > 0)) throw new OutOfRangeError('thetaReference', thetaReference, 'above 0');
  assertWithin('exponent', exponent, 0, 3);
  return Math.min(1, (theta / thetaReference) ** exponent);
}
