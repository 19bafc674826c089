import type { ResidualRow } from '../api/contract.ts';
import { MOST_PICKS } from './compareAddress.ts';
import { sortRows } from './sortRows.ts';

/** Whether a residual has a season to draw. */
export const hasSeason = ({ carryoverModelled, oddsAtPlanting }: ResidualRow): boolean =>
  carryoverModelled && oddsAtPlanting !== null;

/**
 * Residuals whose seasons are drawn: those picked that still have one; where none was picked, the one brought out and
 * those that the label allows and that hold weeds longest, of different intervals so that their lines part.
 */
export function picksOf(
  rows: readonly ResidualRow[],
  picks: readonly string[] | null,
  own: string | undefined,
): string[] {
  const able = rows.filter(hasSeason);
  if (picks !== null) return picks.filter((name) => able.some(({ residual }) => residual === name));
  const longest = sortRows(able, { key: 'weeks', descending: true }).filter(
    (row) => row.labelAllows && row.weeksOfControl !== null,
  );
  const first = able.filter(({ residual }) => residual === own);
  const chosen: ResidualRow[] = [];
  for (const row of [...first, ...longest, ...able]) {
    if (chosen.length === MOST_PICKS) break;
    if (chosen.some(({ interval }) => interval.lengthDays === row.interval.lengthDays)) continue;
    chosen.push(row);
  }
  return chosen.map(({ residual }) => residual);
}

/** Picks with one more or one less; a fourth is not taken. */
export function togglePick(picks: readonly string[], name: string): string[] {
  if (picks.includes(name)) return picks.filter((pick) => pick !== name);
  return picks.length < MOST_PICKS ? [...picks, name] : [...picks];
}

/** Rows that are looked at: those that the label allows, or all; all too where the label allows none. */
export function shownRows<Row extends ResidualRow>(rows: readonly Row[], all: boolean): readonly Row[] {
  const allowed = rows.filter(({ labelAllows }) => labelAllows);
  return all || allowed.length === 0 ? rows : allowed;
}
