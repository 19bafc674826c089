import type { RegionInput } from '../api/contract.ts';
import type { Reading } from '../question/parseDate.ts';

export type Box = NonNullable<RegionInput['box']>;

/** Reads letters of states with commas or spaces between them; nothing written means everywhere. */
export function readStates(text: string): Reading<readonly string[] | null> {
  const written = text
    .split(/[\s,;]+/)
    .filter(Boolean)
    .map((letters) => letters.toUpperCase());
  const strange = written.find((letters) => !/^[A-Z]{2}$/.test(letters));
  if (strange !== undefined) {
    return { problem: `“${strange}” is no state’s two letters. Write them such as MT, ND.` };
  }
  const states = [...new Set(written)];
  return { value: states.length === 0 ? null : states };
}

/** Reads four numbers, west, south, east and north in degrees; nothing written means everywhere. */
export function readBox(text: string): Reading<Box | null> {
  const written = text.split(/[\s,;]+/).filter(Boolean);
  if (written.length === 0) return { value: null };
  const [west, south, east, north] = written.map((one) => Number(one.replace('−', '-')));
  if (written.length !== 4 || [west, south, east, north].some(Number.isNaN)) {
    return { problem: 'A box takes four numbers: west, south, east, north, such as -112, 45, -104, 49.' };
  }
  if (Math.max(Math.abs(west), Math.abs(east)) > 180) {
    return { problem: 'West and east lie between -180 and 180; west of Greenwich is below zero.' };
  }
  if (Math.max(Math.abs(south), Math.abs(north)) > 90 || south > north) {
    return { problem: 'South comes before north, both between -90 and 90.' };
  }
  return { value: { west, south, east, north } };
}

export const sayBox = ({ west, south, east, north }: Box): string => [west, south, east, north].join(', ');
