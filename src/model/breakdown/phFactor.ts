import { assertWithin } from '../../errors.ts';
import type { PhResponse } from '../../schema/phResponse.ts';

/** Range of soil pH that is believed. [pH] */
const PH_RANGE = [3, 11] as const;

/**
 * Site factor on the half-life from soil pH: above 1 the residue lasts longer than the typical half-life says. [-]
 *
 * Equation   slope: a^(min(max(pH, low), high) − ref); steps: the factor of the step that holds pH; else 1
 * Symbols    a = factorPerUnit, factor per unit of pH [-], over 0 to 20; pH = soilPh, in water [pH], 3 to 11 or null;
 *            ref = referencePh, low = lowPh, high = highPh [pH]; a step holds fromPh <= pH < toPh
 * Valid      between the lowest and the highest pH that the sources measured; outside, the value at that bound is kept.
 *            1 where pH is not known, where no response is known, and where only its direction is
 * Source     Weed Science 1985 and 1986 (chlorsulfuron), Journal of Agricultural and Food Chemistry 2002 (prosulfuron),
 *            Weed Research c. 1993 (flumetsulam); data/ph-responses.yaml holds the figures of each active
 * Checked    test/published/ph-factor.json, test/model/phFactor.test.ts
 * @example   phFactor(findActive(catalogue, 'chlorsulfuron').ph, 8) // 3.12
 * @throws {OutOfRangeError} soilPh outside 3 to 11
 */
export function phFactor(response: PhResponse | null, soilPh: number | null): number {
  if (soilPh === null) return 1;
  assertWithin('soilPh', soilPh, ...PH_RANGE);
  if (response?.kind === 'slope') {
    const { factorPerUnit, referencePh, lowPh, highPh } = response;
    return factorPerUnit ** (Math.min(Math.max(soilPh, lowPh), highPh) - referencePh);
  }
  if (response?.kind === 'steps') {
    const step = response.steps.find(
      ({ fromPh = PH_RANGE[0], toPh = Number.POSITIVE_INFINITY }) => fromPh <= soilPh && soilPh < toPh,
    );
    return step?.factor ?? 1;
  }
  return 1;
}
