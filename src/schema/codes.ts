/** Codes of the daily series; plain constants, so that the pure model may use them too. */

/** Marks a value that is absent from a raw integer column; no observed tenth reaches it. */
export const ABSENT = -2_147_483_648;

/** How a day's rain came about. */
export const RAIN_OBSERVED = 0;
/** A share of a multi-day total. */
export const RAIN_SPREAD = 1;
/** Missing; filled with the mean of its time of year, and counted as missing. */
export const RAIN_FILLED = 2;
/** Missing; filled from neighbouring stations' rain of that day, and still counted as missing. */
export const RAIN_NEIGHBOUR = 3;
/** The grower's own gauge in place of the station; counted as present. */
export const RAIN_GAUGE = 4;
/** Whether a day's rain was measured neither at the station nor in the field. */
export const isRainMissing = (origin: number): boolean => origin === RAIN_FILLED || origin === RAIN_NEIGHBOUR;

/** How a day's temperatures came about; the larger code is the weaker. */
export const TEMP_OBSERVED = 0;
/** On a straight line between its neighbours. */
export const TEMP_INTERPOLATED = 1;
/** Mean of its calendar date over the record. */
export const TEMP_CALENDAR_MEAN = 2;

/** Countries that a field may lie in; their label rows can set a date. */
export const FIELD_COUNTRIES = ['US', 'CA'] as const;
export type FieldCountry = (typeof FIELD_COUNTRIES)[number];

/** What becomes of the stand that follows; the first is taken where nothing is said. */
export const STAND_USES = ['harvested', 'grazed', 'cover only'] as const;

/** Crops with a row in the table of interception by growth stage. */
export const INTERCEPTION_CROPS = [
  'cereals',
  'maize',
  'oilseed rape',
  'soybean',
  'pea',
  'bean',
  'sunflower',
  'sugar beet',
  'potato',
  'cotton',
  'linseed',
  'grass',
] as const;
