import { assertWithin } from '../../errors.ts';

/** What the evaporation coefficient of a day depends on. */
export interface EvaporationConditions {
  /** K_r, reduction for a dry surface [–], 0 to 1. */
  kr: number;
  /** K_c,max, most the wet surface can lose relative to ET0 [–], 0 to 1.5; bare soil 1.20. */
  kcMax: number;
  /** K_cb, basal coefficient [–], 0 to K_c,max; nearly bare soil 0.15 or 0. */
  kcb: number;
  /** f_ew, share of the ground both bare and wetted [–], 0 to 1; rain on bare soil 1. */
  exposedWettedFraction: number;
}

/**
 * Evaporation from the soil surface relative to reference evapotranspiration. [–]
 *
 * Equation   K_e = min{K_r (K_c,max − K_cb); f_ew K_c,max}
 * Symbols    see {@link EvaporationConditions}
 * Valid      daily steps of the dual coefficient method; outside the ranges -> OutOfRangeError
 * Source     FAO-56 eq. 71
 * Checked    test/published/evaporation.json
 * @example   evaporationCoefficient({ kr: 1, kcMax: 1.2, kcb: 0.15, exposedWettedFraction: 1 }) // 1.05
 */
export function evaporationCoefficient({
  kr,
  kcMax,
  kcb,
  exposedWettedFraction,
}: EvaporationConditions): number {
  assertWithin('kr', kr, 0, 1);
  assertWithin('kcMax', kcMax, 0, 1.5);
  assertWithin('kcb', kcb, 0, kcMax);
  assertWithin('exposedWettedFraction', exposedWettedFraction, 0, 1);
  return Math.min(kr * (kcMax - kcb), exposedWettedFraction * kcMax);
}
