import type { Units } from '../quantities.ts';
import { inchesFromMm } from '../units.ts';

/** Rain in the units asked for: "19.6 in", "498 mm". */
export const sayRain = (mm: number, units: Units): string =>
  units === 'us' ? `${inchesFromMm(mm).toFixed(1)} in` : `${mm.toFixed(0)} mm`;

/** Name and value in two columns, one pair a line. */
export const pairLines = (rows: readonly (readonly [string, string])[]): string =>
  rows.map(([name, value]) => `${name.padEnd(22)}${value}`).join('\n');
