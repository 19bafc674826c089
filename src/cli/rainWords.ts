import { inchesFromMm } from '../units.ts';

/** Rain in both units: "19.6 in (498 mm)". */
export const sayRain = (mm: number): string => `${inchesFromMm(mm).toFixed(1)} in (${mm.toFixed(0)} mm)`;

/** Name and value in two columns, one pair a line. */
export const pairLines = (rows: readonly (readonly [string, string])[]): string =>
  rows.map(([name, value]) => `${name.padEnd(22)}${value}`).join('\n');
