/** Unit conversions and physical constants. Metric inside; US units only at the edges (cli, http, web). */

/** Millimetres in one inch, exact. [mm/in] */
export const MM_PER_INCH = 25.4;

/** Evaporated water depth for one MJ/m2, at 2.45 MJ/kg. Source: FAO-56 eq. 20. [mm per MJ/m2] */
export const MM_PER_MEGAJOULE = 0.408;

/** Metres in one foot, exact. [m/ft] */
export const METRES_PER_FOOT = 0.3048;

/** Grams of active ingredient per hectare in one ounce per acre: 28.349523125 g over 0.40468564224 ha. [g/ha per oz/ac] */
export const GRAMS_PER_HA_PER_OUNCE_PER_ACRE = 28.349523125 / 0.40468564224;

/** Inches to millimetres. [mm] */
export const mmFromInches = (inches: number): number => inches * MM_PER_INCH;

/** Millimetres to inches. [in] */
export const inchesFromMm = (mm: number): number => mm / MM_PER_INCH;

/** Degrees Celsius to degrees Fahrenheit. [°F] */
export const fahrenheitFromCelsius = (celsius: number): number => celsius * 1.8 + 32;

/** Degrees Fahrenheit to degrees Celsius. [°C] */
export const celsiusFromFahrenheit = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/** Hectares in an acre (international): exact. [ha] */
export const HECTARES_PER_ACRE = 0.40468564224;
