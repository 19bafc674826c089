/** Unit conversions and physical constants. Metric inside; US units only at the edges (cli, http, web). */

/** Millimetres in one inch, exact. [mm/in] */
export const MM_PER_INCH = 25.4;

/** Evaporated water depth for one MJ/m2, at 2.45 MJ/kg. Source: FAO-56 eq. 20. [mm per MJ/m2] */
export const MM_PER_MEGAJOULE = 0.408;

/** Metres in one foot, exact. [m/ft] */
export const METRES_PER_FOOT = 0.3048;

/** Hectares in one acre, international, exact. [ha/acre] */
export const HECTARES_PER_ACRE = 0.40468564224;

/** Grams in one ounce, exact. [g/oz] */
const GRAMS_PER_OUNCE = 28.349523125;

/**
 * Inches to millimetres. [mm]
 * @example mmFromInches(1) // 25.4
 */
export const mmFromInches = (inches: number): number => inches * MM_PER_INCH;

/**
 * Millimetres to inches. [in]
 * @example inchesFromMm(25.4) // 1
 */
export const inchesFromMm = (mm: number): number => mm / MM_PER_INCH;

/**
 * Degrees Celsius to degrees Fahrenheit. [°F]
 * @example fahrenheitFromCelsius(20) // 68
 */
export const fahrenheitFromCelsius = (celsius: number): number => celsius * 1.8 + 32;

/**
 * Degrees Fahrenheit to degrees Celsius. [°C]
 * @example celsiusFromFahrenheit(68) // 20
 */
export const celsiusFromFahrenheit = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/**
 * Acres to hectares. [ha]
 * @example hectaresFromAcres(160) // 64.7497
 */
export const hectaresFromAcres = (acres: number): number => acres * HECTARES_PER_ACRE;

/**
 * Hectares to acres. [acres]
 * @example acresFromHectares(64.75) // 160.0007
 */
export const acresFromHectares = (hectares: number): number => hectares / HECTARES_PER_ACRE;

/**
 * Ounces an acre to grams a hectare. [g/ha]
 * @example gramsPerHaFromOuncesPerAcre(1.5) // 105.08
 */
export const gramsPerHaFromOuncesPerAcre = (ouncesPerAcre: number): number =>
  (ouncesPerAcre * GRAMS_PER_OUNCE) / HECTARES_PER_ACRE;

/**
 * Grams a hectare to ounces an acre. [oz/acre]
 * @example ouncesPerAcreFromGramsPerHa(105) // 1.49886
 */
export const ouncesPerAcreFromGramsPerHa = (gramsPerHa: number): number =>
  (gramsPerHa * HECTARES_PER_ACRE) / GRAMS_PER_OUNCE;

/** Days that half a month is taken for, as labels with "10.5 months" are read. [d] */
export const HALF_MONTH_DAYS = 15;

/**
 * Months as labels write them, halves included, as whole months and days.
 * @example intervalFromMonths(10.5) // { months: 10, days: 15 }
 */
export function intervalFromMonths(months: number): { months: number; days: number } {
  const whole = Math.floor(months);
  return { months: whole, days: Math.round((months - whole) * 2 * HALF_MONTH_DAYS) };
}
