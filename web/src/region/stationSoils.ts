import { TEXTURE_CLASSES, type TextureClass } from '../../../src/schema/soil.ts';
import type { Reading } from '../question/parseDate.ts';

/** Soil texture classes by station id. */
export type StationSoils = Readonly<Record<string, TextureClass>>;

/** Stations that a link can hold; a longer column goes by the command line. */
export const MOST_SOILS = 400;

const SIGN = /[\t,;]/;

/**
 * Reads a column of soils, one station a line: its id, a comma, semicolon or tab, its texture class. A line of heads
 * at the top is passed over.
 */
export function readSoils(text: string): Reading<StationSoils | null> {
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean);
  const soils = new Map<string, TextureClass>();
  for (const [index, line] of lines.entries()) {
    const [id, soil, ...more] = line.split(SIGN).map((part) => part.trim());
    const found = TEXTURE_CLASSES.find((name) => name === soil?.toLowerCase());
    if (id === '' || found === undefined || more.length > 0) {
      if (index === 0 && /soil/i.test(soil ?? '') && more.length === 0) continue;
      return {
        problem: `Line ${index + 1}, “${line}”, is no station with its soil. Write such as GHCN0001, silt loam; the soils are ${TEXTURE_CLASSES.join(', ')}.`,
      };
    }
    if (soils.has(id)) return { problem: `${id} stands there twice.` };
    soils.set(id, found);
  }
  if (soils.size > MOST_SOILS)
    return { problem: `${soils.size} stations are more than the ${MOST_SOILS} that a link can hold.` };
  return { value: soils.size === 0 ? null : Object.fromEntries(soils) };
}

/** The column as {@link readSoils} takes it. @param between what parts the stations */
export const saySoils = (soils: StationSoils | null, between = '\n'): string =>
  Object.entries(soils ?? {})
    .map(([id, soil]) => `${id}, ${soil}`)
    .join(between);
