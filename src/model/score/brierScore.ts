import { InvalidInputError } from '../../errors.ts';

/**
 * Brier score: mean squared difference of probabilities and outcomes. [0-1], 0 is perfect
 *
 * Equation   BS = Σ (p − o)²/n
 * Symbols    probabilities = p [0-1]; outcomes = o, 1 where it happened, else 0; n of each
 * Valid      as many outcomes as probabilities, at least one; else InvalidInputError
 * Source     verification of probability forecasts, usual definition
 * Checked    test/published/scores.json (C-BS-1)
 * @example   brierScore([0.1, 0.9, 0.8, 0.3], [0, 1, 1, 0]) // 0.0375
 */
export function brierScore(probabilities: ArrayLike<number>, outcomes: ArrayLike<number>): number {
  if (probabilities.length !== outcomes.length || outcomes.length === 0) {
    throw new InvalidInputError(
      'OUTCOMES_DO_NOT_MATCH',
      `There are ${probabilities.length} probabilities and ${outcomes.length} outcomes; there must be as many of one as of the other, and at least one.`,
      { hint: 'Give one outcome for each probability.' },
    );
  }
  let sum = 0;
  for (let i = 0; i < outcomes.length; i++) sum += (probabilities[i] - outcomes[i]) ** 2;
  return sum / outcomes.length;
}

/**
 * Skill against always giving the share in which it happened; null where it always or never happened. [-]
 *
 * Equation   BSS = 1 − BS/(ō(1 − ō))
 * Symbols    score = BS [0-1]; baseRate = ō, share of outcomes that happened [0-1]
 * Valid      1 is perfect, 0 no better than the share alone, below 0 worse
 * Source     verification of probability forecasts, usual definition
 * Checked    test/published/scores.json (C-BS-1, C-BS-2)
 * @example   brierSkill(0.0375, 0.5) // 0.85
 */
export function brierSkill(score: number, baseRate: number): number | null {
  const uncertainty = baseRate * (1 - baseRate);
  return uncertainty > 0 ? 1 - score / uncertainty : null;
}
