/** Numbers that stand in metric units and are shown in those that the reader chose: blanks of the page, lists of a file. */
import { acresFromHectares, METRES_PER_FOOT, MM_PER_INCH, ouncesPerAcreFromGramsPerHa } from './units.ts';

export type Units = 'us' | 'metric';

/** Kinds of number, by the way they are shown. */
export type Quantity =
  | 'plain'
  | 'fraction'
  | 'twentieths'
  | 'rain'
  | 'height'
  | 'perRain'
  | 'meltRate'
  | 'rate'
  | 'depth'
  | 'area';

const FAHRENHEIT_PER_CELSIUS = 1.8;
const MM_PER_CM = 10;

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
    case 'depth':
      return MM_PER_CM / MM_PER_INCH;
    case 'area':
      return acresFromHectares(1);
    case 'perRain':
      return MM_PER_INCH;
    case 'meltRate':
      return 1 / MM_PER_INCH / FAHRENHEIT_PER_CELSIUS;
    case 'rate':
      return ouncesPerAcreFromGramsPerHa(1);
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
