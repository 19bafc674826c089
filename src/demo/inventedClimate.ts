/**
 * The climate of the invented place. Every number here is made up for the demo: a semi-arid, cold-winter
 * country of small grain with its rain in May and June. It is no real station's table.
 */

/** Rain of one calendar month. */
export interface MonthlyRain {
  /** Share of days with rain in a middling year [0-1]. */
  readonly wetDayShare: number;
  /** Mean rain of a wet day in a middling year [mm]. */
  readonly wetDayMeanMm: number;
}

/** January to December. */
export const MONTHLY_RAIN: readonly MonthlyRain[] = [
  { wetDayShare: 0.23, wetDayMeanMm: 2.1 },
  { wetDayShare: 0.22, wetDayMeanMm: 2.1 },
  { wetDayShare: 0.24, wetDayMeanMm: 2.7 },
  { wetDayShare: 0.28, wetDayMeanMm: 4.3 },
  { wetDayShare: 0.35, wetDayMeanMm: 6.0 },
  { wetDayShare: 0.36, wetDayMeanMm: 6.3 },
  { wetDayShare: 0.24, wetDayMeanMm: 5.3 },
  { wetDayShare: 0.21, wetDayMeanMm: 5.1 },
  { wetDayShare: 0.21, wetDayMeanMm: 5.0 },
  { wetDayShare: 0.2, wetDayMeanMm: 4.1 },
  { wetDayShare: 0.21, wetDayMeanMm: 2.6 },
  { wetDayShare: 0.22, wetDayMeanMm: 2.2 },
];

/** Least rain of a wet day [mm]; amounts are this much plus a gamma variate. */
export const WET_DAY_MM = 0.3;

/** Standard deviation of a wet day's rain above {@link WET_DAY_MM}, over its mean [-]. */
export const WET_DAY_VARIATION = 1.2;

/** Wetness is a logarithm that moves the chance of rain and the amount alike [-]. */
export const WETNESS = {
  /** Standard deviation from one October-to-September year to the next. */
  yearlySd: 0.12,
  /** Standard deviation of the slow wet and dry spells inside a year. */
  spellSd: 0.3,
  /** Time in which a spell fades to 1/e [d]. */
  spellDays: 30,
  /** Time from one change of a spell's wetness to the next [d]. */
  spellStepDays: 5,
} as const;

/** The yearly course of temperature, and what moves a day away from it. */
export const TEMPERATURE = {
  /** Mean of the year [°C]. */
  yearMeanC: 7,
  /** Half the way from the coldest to the warmest day's normal [°C]. */
  halfSwingC: 13.3,
  /** Day of the year with the warmest normal, 1 January being 0 [d]. */
  warmestYearDay: 201,
  /** Normal difference between maximum and minimum of a dry day, year's mean and half swing [°C]. */
  rangeMeanC: 13.5,
  rangeHalfSwingC: 2.8,
  /** What rain takes from the day's maximum and adds to its minimum, summer and winter [°C]. */
  wetMaxDropSummerC: 5,
  wetMaxDropWinterC: 1.5,
  wetMinRiseC: 1,
  /** Standard deviation of the weather's swing about the normal, midsummer and midwinter [°C]. */
  swingSummerC: 3,
  swingWinterC: 6,
  /** Correlation of that swing from one day to the next [-]. */
  swingMemory: 0.75,
  /** Width of the even spread of the daily range about its normal [°C], and the least range [°C]. */
  rangeSpanC: 9,
  leastRangeC: 1.5,
} as const;
