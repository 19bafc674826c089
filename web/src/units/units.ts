import type { Units } from '../../../src/quantities.ts';
import { acresFromHectares, inchesFromMm, METRES_PER_FOOT } from '../../../src/units.ts';

/** The two sets of units a page can speak. */
export type { Units };

/** Name of the rain unit. */
export const rainUnit = (units: Units): 'in' | 'mm' => (units === 'us' ? 'in' : 'mm');

/** Rain in the unit shown, unrounded. */
export const rainValue = (mm: number, units: Units): number => (units === 'us' ? inchesFromMm(mm) : mm);

/** Rain as it is written: two decimals of an inch, whole millimetres. */
export const rainNumber = (mm: number, units: Units): string =>
  rainValue(mm, units).toFixed(units === 'us' ? 2 : 0);

/** Rain with its unit. */
export const rainText = (mm: number, units: Units): string => `${rainNumber(mm, units)} ${rainUnit(units)}`;

export { type Quantity, shownNumber, shownPerStored, storedNumber } from '../../../src/quantities.ts';

const FAHRENHEIT_PER_CELSIUS = 1.8;

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

/** Name of the unit of field sizes. */
export const areaUnit = (units: Units): 'acres' | 'ha' => (units === 'us' ? 'acres' : 'ha');

/** A field's size with its unit, to a tenth. */
export const areaText = (hectares: number, units: Units): string =>
  `${Number((units === 'us' ? acresFromHectares(hectares) : hectares).toFixed(1)).toLocaleString('en-US')} ${areaUnit(units)}`;

/** Name of the unit of doses of an active. */
export const doseUnit = (units: Units): 'oz/acre' | 'g/ha' => (units === 'us' ? 'oz/acre' : 'g/ha');
