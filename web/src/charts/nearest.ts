import type { Ruler } from '../../../src/chart/ruler.ts';

/** The row with the least distance; null where there is none. */
export function nearest<Row>(rows: readonly Row[], distance: (row: Row) => number): Row | null {
  let best: Row | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const row of rows) {
    const away = distance(row);
    if (away < least) [best, least] = [row, away];
  }
  return best;
}

/** The row whose date lies nearest to a place on a chart of the ruler. @param x from the drawing’s left edge [px] */
export function nearestOnRuler<Row>(
  { fromMs, toMs, leftPx, widthPx }: Ruler,
  rows: readonly Row[],
  msOfRow: (row: Row) => number,
  x: number,
): Row | null {
  const ms = fromMs + ((x - leftPx) / widthPx) * (toMs - fromMs);
  return nearest(rows, (row) => Math.abs(msOfRow(row) - ms));
}
