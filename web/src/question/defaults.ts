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

const NAMES: Readonly<Record<(typeof REQUIRED_FIELDS)[number], string>> = {
  station: 'the weather record',
  appliedOn: 'the date of spraying',
  residual: 'the residual',
  crop: 'the next crop',
  plantOn: 'the planting date',
};

/** What a question still lacks of some fields, in words; a label entry names its own residual. */
export const missingWords = (
  question: Partial<Record<(typeof REQUIRED_FIELDS)[number] | 'labelEntry', unknown>>,
  fields: readonly (typeof REQUIRED_FIELDS)[number][] = REQUIRED_FIELDS,
): string[] =>
  fields
    .filter((field) => !question[field] && !(field === 'residual' && question.labelEntry))
    .map((field) => NAMES[field]);
