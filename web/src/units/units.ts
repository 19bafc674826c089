import {
  GRAMS_PER_HA_PER_OUNCE_PER_ACRE,
  inchesFromMm,
  METRES_PER_FOOT,
  MM_PER_INCH,
} from '../../../src/units.ts';

/** The two sets of units a page can speak. */
export type Units = 'us' | 'metric';

/** Name of the rain unit. */
export const rainUnit = (units: Units): 'in' | 'mm' => (units === 'us' ? 'in' : 'mm');

/** Rain in the unit shown, unrounded. */
export const rainValue = (mm: number, units: Units): number => (units === 'us' ? inchesFromMm(mm) : mm);

/** Rain as it is written: two decimals of an inch, whole millimetres. */
export const rainNumber = (mm: number, units: Units): string =>
  rainValue(mm, units).toFixed(units === 'us' ? 2 : 0);

/** Rain with its unit. */
export const rainText = (mm: number, units: Units): string => `${rainNumber(mm, units)} ${rainUnit(units)}`;

/** Kinds of number that a blank can hold, by the way they are shown. */
export type Quantity =
  | 'plain'
  | 'fraction'
  | 'twentieths'
  | 'rain'
  | 'height'
  | 'perRain'
  | 'meltRate'
  | 'rate';

const FAHRENHEIT_PER_CELSIUS = 1.8;

/** How many shown units make one stored unit. */
export function shownPerStored(quantity: Quantity, units: Units): number {
  if (quantity === 'fraction') return 100;
  if (quantity === 'twentieths') return 20;
  if (units === 'metric') return 1;
  switch (quantity) {
    case 'rain':
      return 1 / MM_PER_INCH;
    case 'height':
      return 1 / METRES_PER_FOOT;
    case 'perRain':
      return MM_PER_INCH;
    case 'meltRate':
      return 1 / MM_PER_INCH / FAHRENHEIT_PER_CELSIUS;
    case 'rate':
      return 1 / GRAMS_PER_HA_PER_OUNCE_PER_ACRE;
    default:
      return 1;
  }
}

/** A stored number as a blank shows it, without a tail of digits. */
export function shownNumber(stored: number, quantity: Quantity, units: Units): string {
  const shown = stored * shownPerStored(quantity, units);
  const digits = quantity === 'height' ? 5 : 4;
  return `${Number(shown.toPrecision(digits))}`;
}

/** What a blank's number stands for; rounding hides the noise of the conversion. */
export function storedNumber(shown: number, quantity: Quantity, units: Units): number {
  return Number((shown / shownPerStored(quantity, units)).toPrecision(12));
}

const KM_PER_MILE = 1.609344;

/** Name of the unit of distances. */
export const distanceUnit = (units: Units): 'mi' | 'km' => (units === 'us' ? 'mi' : 'km');

/** A distance in whole units, as it is written. */
export const distanceNumber = (km: number, units: Units): string =>
  `${Math.round(units === 'us' ? km / KM_PER_MILE : km)}`;

/** Name of the unit of heights. */
export const heightUnit = (units: Units): 'ft' | 'm' => (units === 'us' ? 'ft' : 'm');

/** A height in whole units, with separators, as it is written. */
export const heightNumber = (metres: number, units: Units): string =>
  Math.round(units === 'us' ? metres / METRES_PER_FOOT : metres).toLocaleString('en-US');

/** A temperature in the unit shown, with it. */
export const temperatureText = (celsius: number, units: Units): string =>
  units === 'us' ? `${Math.round(celsius * FAHRENHEIT_PER_CELSIUS + 32)} °F` : `${celsius.toFixed(1)} °C`;
