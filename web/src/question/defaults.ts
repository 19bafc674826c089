/** Values taken where a question leaves a field out, but for empty lists; a test holds them to the schema. */
export const QUESTION_DEFAULTS = {
  fillFromNeighbours: false,
  country: 'US',
  coverFraction: 0.6,
  rateFraction: 1,
  overlapFactor: 1,
  canopyFraction: 0,
  oddsLimit: 0.1,
  restOfSeasonRain: 1,
} as const;

/** Fields without which there is no question. */
export const REQUIRED_FIELDS = ['station', 'appliedOn', 'residual', 'crop', 'plantOn'] as const;
