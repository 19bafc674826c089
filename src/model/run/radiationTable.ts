import { extraterrestrialRadiation } from '../radiation/extraterrestrialRadiation.ts';

/**
 * Extraterrestrial radiation of every day of the year at one latitude; index 1-366. [MJ m-2 d-1]
 * @throws {OutOfRangeError} latitude outside −90 … 90
 */
export function radiationTable(latitudeDeg: number): Float64Array {
  const table = new Float64Array(367);
  for (let day = 1; day <= 366; day++) table[day] = extraterrestrialRadiation(latitudeDeg, day);
  return table;
}
