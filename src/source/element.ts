/**
 * The five elements used, in the order of a record's columns:
 * daily rain, maximum and minimum temperature, rain total of several days, number of days in that total.
 */
export const ELEMENTS = ['PRCP', 'TMAX', 'TMIN', 'MDPR', 'DAPR'] as const;

export const RAIN = 0;
export const MAX_TEMP = 1;
export const MIN_TEMP = 2;
export const MULTI_DAY_RAIN = 3;
export const MULTI_DAY_COUNT = 4;

/** Stands for an element that is not used. */
export const NOT_USED = -1;

const packed = (bytes: ArrayLike<number>, at: number): number =>
  (bytes[at] << 24) | (bytes[at + 1] << 16) | (bytes[at + 2] << 8) | bytes[at + 3];

const CODES = ELEMENTS.map((name) =>
  packed(
    [...name].map((letter) => letter.charCodeAt(0)),
    0,
  ),
);

/** Column of the four-letter element name at `at`, or {@link NOT_USED}; allocates nothing. */
export const elementAt = (bytes: Uint8Array, at: number): number => CODES.indexOf(packed(bytes, at));

/** Beyond these no weather on land has been measured (wettest day on record 1825 mm; −89 and +57 °C at the poles and in deserts, −68 where crops grow). */
const MOST_RAIN_TENTHS_MM = 20_000;
const MOST_TEMP_TENTHS_C = 700;

/** Whether a value can be real weather; false values are dropped and counted. */
export function isPlausible(element: number, value: number): boolean {
  switch (element) {
    case RAIN:
      return value >= 0 && value <= MOST_RAIN_TENTHS_MM;
    case MULTI_DAY_RAIN:
      return value >= 0;
    case MULTI_DAY_COUNT:
      return value >= 1;
    default:
      return value >= -MOST_TEMP_TENTHS_C && value <= MOST_TEMP_TENTHS_C;
  }
}
