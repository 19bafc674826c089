/** Upper bounds of the seven steps of the odds scale but the last. [0-1] */
export const ODDS_BOUNDS = [0.05, 0.1, 0.2, 0.35, 0.5, 0.75] as const;

/** One word or phrase for each step, to stand beside its number. */
export const ODDS_WORDS = [
  'hardly ever',
  'seldom',
  'now and then',
  'fairly often',
  'near even',
  'more often than not',
  'nearly always',
] as const;

/** Step of the odds scale, 0 for the lowest to 6. A bound belongs to the step above it. */
export function oddsStep(odds: number): number {
  const step = ODDS_BOUNDS.findIndex((bound) => odds < bound);
  return step < 0 ? ODDS_BOUNDS.length : step;
}
