import type { UnitSystem } from '../schema/readOptions.ts';
import { celsiusFromFahrenheit, MM_PER_INCH } from '../units.ts';

/** A system in words, for notes and questions. */
export const UNIT_WORDS: Record<UnitSystem, string> = {
  us: 'inches and °F',
  metric: 'mm and °C',
  tenths: 'tenths of mm and of °C',
};

export const UNIT_SYSTEMS = Object.keys(UNIT_WORDS) as UnitSystem[];

/** Choices as a question puts them. */
export const unitChoices = (systems: readonly UnitSystem[] = UNIT_SYSTEMS): string =>
  systems.map((system) => `--units-in ${system} (${UNIT_WORDS[system]})`).join(', ');

/** Exactly 254, so that quarters of an inch stay exact halves of a tenth and go up, as in the public records. [0.1 mm/in] */
const TENTHS_PER_INCH = MM_PER_INCH * 10;

/** Rain as whole tenths of a millimetre. [0.1 mm] */
export function rainTenths(value: number, units: UnitSystem): number {
  if (units === 'tenths') return Math.round(value);
  return Math.round(value * (units === 'us' ? TENTHS_PER_INCH : 10));
}

/** A temperature as whole tenths of a degree Celsius. [0.1 °C] */
export function tempTenths(value: number, units: UnitSystem): number {
  if (units === 'tenths') return Math.round(value);
  return Math.round((units === 'us' ? celsiusFromFahrenheit(value) : value) * 10);
}
