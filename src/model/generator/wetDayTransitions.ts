import { assertWithin } from '../../errors.ts';

/** Chances that a day is wet, given the day before. [–] */
export interface WetDayTransitions {
  /** P(W|D), chance of a wet day after a dry one. */
  wetAfterDry: number;
  /** P(W|W), chance of a wet day after a wet one. */
  wetAfterWet: number;
}

/**
 * Chances of a wet day after a dry and after a wet one, from the share of wet days alone. [–]
 *
 * Equation   P(W|D) = 0.75 f; P(W|W) = 0.25 + P(W|D)
 * Symbols    wetDayShare = f, wet days over all days [–], 0 to 1
 * Valid      an average over many climates; the pair always gives f back; outside 0 to 1 -> OutOfRangeError
 * Source     Agricultural and Forest Meteorology 36, 363-376 (1986), as coded in public repositories
 * Checked    test/published/generator.json
 * @example   wetDayTransitions(1 / 3) // { wetAfterDry: 0.25, wetAfterWet: 0.5 }
 */
export function wetDayTransitions(wetDayShare: number): WetDayTransitions {
  assertWithin('wetDayShare', wetDayShare, 0, 1);
  const wetAfterDry = 0.75 * wetDayShare;
  return { wetAfterDry, wetAfterWet: 0.25 + wetAfterDry };
}

/**
 * Share of wet days to which a two-state Markov chain settles. [–]
 *
 * Equation   π = P(W|D)/(1 + P(W|D) − P(W|W))
 * Symbols    wetAfterWet = P(W|W), wetAfterDry = P(W|D), chances of a wet day [–], 0 to 1, not the pair
 *            P(W|W) = 1 with P(W|D) = 0, which has no single share and gives NaN
 * Valid      first-order chain; outside 0 to 1 -> OutOfRangeError
 * Source     stationary share of a two-state Markov chain
 * Checked    test/published/generator.json
 * @example   longRunWetShare(0.47, 0.2) // 0.2740
 */
export function longRunWetShare(wetAfterWet: number, wetAfterDry: number): number {
  assertWithin('wetAfterWet', wetAfterWet, 0, 1);
  assertWithin('wetAfterDry', wetAfterDry, 0, 1);
  return wetAfterDry / (1 + wetAfterDry - wetAfterWet);
}

/**
 * Mean length of a run of wet and of a run of dry days; Infinity where a run never ends. [d]
 *
 * Equation   wet 1/(1 − P(W|W)); dry 1/P(W|D)
 * Symbols    wetAfterWet = P(W|W), wetAfterDry = P(W|D), chances of a wet day [–], 0 to 1
 * Valid      first-order chain; outside 0 to 1 -> OutOfRangeError
 * Source     geometric run lengths of a two-state Markov chain
 * Checked    test/published/generator.json
 * @example   meanSpells(0.47, 0.2) // { wetDays: 1.887, dryDays: 5 }
 */
export function meanSpells(wetAfterWet: number, wetAfterDry: number): { wetDays: number; dryDays: number } {
  assertWithin('wetAfterWet', wetAfterWet, 0, 1);
  assertWithin('wetAfterDry', wetAfterDry, 0, 1);
  return { wetDays: 1 / (1 - wetAfterWet), dryDays: 1 / wetAfterDry };
}
