import type { ControlRow } from '../../src/chart/controlAgainstOdds.ts';
import type { OverlaidSeason } from '../../src/chart/overlaySeasons.ts';
import type { Season } from '../../src/schema/answer.ts';

const row = (
  residual: string,
  odds: number | null,
  weeks: [number | null, number | null, number | null] | null,
  { fromMemory = false, labelAllows = true } = {},
): ControlRow => ({
  residual,
  oddsAtPlanting: odds,
  thirdOdds: odds === null ? null : { dry: Math.min(1, odds * 1.3), middle: odds, wet: odds * 0.7 },
  weeksOfControl: weeks && { dry: weeks[0], middle: weeks[1], wet: weeks[2] },
  labelAllows,
  interval: { fromMemory },
});

/** Invented residuals: one of each kind that the chart draws differently, and one that it leaves out. */
export const controlRows: readonly ControlRow[] = [
  row('seen', 0.2, [9, 8, 7]),
  row('recalled', 0.3, [5, 4.5, 4], { fromMemory: true }),
  row('ruled out', 0.9, [null, null, 60], { labelAllows: false }),
  row('ruled out, recalled', 0.97, [40, 38, 36], { fromMemory: true, labelAllows: false }),
  row('no half-life', 0.25, null),
  row('same place', 0.25, null),
  row('leaves nothing', null, null),
];

/** Seasons laid over each other: the given one, and two that fall faster. */
export const overlaid = (
  { startDate, odds }: Season,
  labelDate: string,
  clearDate: string | null,
): OverlaidSeason[] => [
  { letter: 'A', startDate, odds, labelDate, clearDate },
  { letter: 'B', startDate, odds: odds.map((value) => value ** 2), labelDate, clearDate: null },
  {
    letter: 'C',
    startDate,
    odds: odds.map((value) => value ** 4),
    labelDate: startDate,
    clearDate: labelDate,
  },
];
