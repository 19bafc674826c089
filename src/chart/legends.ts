/** How the twenty dots are read. */
export const dotsLegend = (clearDate: string | null): string =>
  `Each dot is one of twenty seasons and soils, on the day it turns safe. Line: planting. L: label date.${
    clearDate === null ? '' : ' C: odds down to the limit.'
  }`;

/** What the lines of the season are. */
export const SEASON_KEYS = [
  { key: 'odds', words: 'odds over all years' },
  { key: 'dry', words: 'dry' },
  { key: 'middle', words: 'middle' },
  { key: 'wet', words: 'wet years' },
] as const;

/** What the bars of rain are. */
export const RAIN_KEYS = [
  { key: 'observed', words: 'fell' },
  { key: 'normal', words: 'normal for the same days' },
] as const;
