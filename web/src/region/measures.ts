import { oddsStep } from '../../../src/chart/oddsScale.ts';
import type { RegionRow } from '../api/contract.ts';

/** What the map shows of each station. */
export const MEASURES = ['now', 'normal', 'short', 'summer', 'warm'] as const;
export type Measure = (typeof MEASURES)[number];

/** What each is called on its button. */
export const MEASURE_NAMES: Record<Measure, string> = {
  now: 'Odds this season',
  normal: 'Odds in a normal year',
  short: 'Label interval not enough',
  summer: 'June to August rain',
  warm: 'Warm rain so far',
};

/** Rain against normal under and over which a station counts as dry or wet. [share of normal] */
export const DRY_SHARE = 0.75;
export const WET_SHARE = 1.25;

export type MarkShape = 'circle' | 'diamond' | 'triangle' | 'ring' | 'square' | 'cross' | 'hatched';

/** How a station stands on the map. */
export interface Mark {
  readonly shape: MarkShape;
  /** Size, from 0 for the smallest to 1. */
  readonly size: number;
  /** Colour or pattern, as the page names it. */
  readonly fill: string;
}

/** A station's number in a measure, as a share; null where it has none. [0-1, rain: share of normal] */
export function shareOf({ figures }: RegionRow, measure: Measure): number | null {
  if (figures === null) return null;
  if (measure === 'now') return figures.oddsNow;
  if (measure === 'normal') return figures.oddsNormal;
  if (measure === 'short') return figures.labelTooShortShare;
  const rain = measure === 'summer' ? figures.summerRain : figures.warmRain;
  return rain?.percentOfNormal == null ? null : rain.percentOfNormal / 100;
}

/** The measure that opens: this season's odds where any station has them. */
export const usualMeasure = (rows: readonly RegionRow[]): Measure =>
  rows.some(({ figures }) => figures?.oddsNow != null) ? 'now' : 'normal';

/** A station's mark: its shape says on which side of the limit, or of normal, it lies. */
export function markOf(row: RegionRow, measure: Measure, oddsLimit: number): Mark {
  if (row.figures === null) return { shape: 'hatched', size: 0.4, fill: 'url(#hatch)' };
  const value = shareOf(row, measure);
  if (value === null) return { shape: 'cross', size: 0.3, fill: 'none' };
  if (measure === 'short') return { shape: 'circle', size: value, fill: 'var(--soft-ink)' };
  if (measure === 'summer' || measure === 'warm') {
    const size = Math.min(1, 0.35 + Math.abs(value - 1));
    if (value < DRY_SHARE) return { shape: 'triangle', size, fill: 'var(--dry)' };
    if (value > WET_SHARE) return { shape: 'square', size, fill: 'var(--wet)' };
    return { shape: 'ring', size: 0.35, fill: 'none' };
  }
  const step = oddsStep(value);
  return { shape: value > oddsLimit ? 'diamond' : 'circle', size: step / 6, fill: `var(--odds-${step})` };
}
