import type { ResidualRow } from '../api/contract.ts';

/** Columns that the table can be sorted by. */
export const SORT_KEYS = ['name', 'odds', 'dry', 'weeks', 'label', 'clear', 'interval'] as const;
export type SortKey = (typeof SORT_KEYS)[number];

export interface Sort {
  readonly key: SortKey;
  readonly descending: boolean;
}

/** What a row is sorted by; null where it has none. */
const VALUE: Record<SortKey, (row: ResidualRow) => string | number | null> = {
  name: ({ residual }) => residual.toLowerCase(),
  odds: ({ oddsAtPlanting }) => oddsAtPlanting,
  dry: ({ thirdOdds }) => thirdOdds?.dry ?? null,
  weeks: ({ weeksOfControl }) =>
    weeksOfControl === null ? null : (weeksOfControl.middle ?? Number.MAX_VALUE),
  label: ({ labelDate }) => labelDate,
  clear: ({ clearDate }) => clearDate ?? '9999-12-31',
  interval: ({ interval }) => interval.lengthDays,
};

/**
 * Rows in another order; those without a value stand last either way, and equals keep the order they had. Without a
 * wish the server’s order stands, but for those that leave nothing to reckon with: they come after what fits.
 */
export function sortRows<Row extends ResidualRow>(rows: readonly Row[], sort: Sort | null): Row[] {
  if (sort === null) {
    const rank = ({ withinLimit, labelAllows, oddsAtPlanting }: ResidualRow) =>
      (withinLimit ? 0 : labelAllows ? 2 : 3) + (oddsAtPlanting === null && withinLimit ? 1 : 0);
    return rows.toSorted((a, b) => rank(a) - rank(b));
  }
  const value = VALUE[sort.key];
  const sign = sort.descending ? -1 : 1;
  return rows.toSorted((a, b) => {
    const [x, y] = [value(a), value(b)];
    if (x === null || y === null) return Number(x === null) - Number(y === null);
    return x === y ? 0 : x < y ? -sign : sign;
  });
}

/** The next order on a press of a column’s head: rising, falling, best first again. */
export function nextSort(sort: Sort | null, key: SortKey): Sort | null {
  if (sort?.key !== key) return { key, descending: false };
  return sort.descending ? null : { key, descending: true };
}
