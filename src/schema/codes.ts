/** Codes of the daily series; plain constants, so that the pure model may use them too. */

/** Marks a value that is absent from a raw integer column; no observed tenth reaches it. */
export const ABSENT = -2_147_483_648;

/** How a day's rain came about. */
export const RAIN_OBSERVED = 0;
/** A share of a multi-day total. */
export const RAIN_SPREAD = 1;
/** Missing; filled with the mean of its time of year, and counted as missing. */
export const RAIN_FILLED = 2;

/** How a day's temperatures came about; the larger code is the weaker. */
export const TEMP_OBSERVED = 0;
/** On a straight line between its neighbours. */
export const TEMP_INTERPOLATED = 1;
/** Mean of its calendar date over the record. */
export const TEMP_CALENDAR_MEAN = 2;
