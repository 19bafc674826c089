import type { ConditionedInterval } from '../analysis/labelConditions.ts';
import { countingRows } from '../catalogue/chooseInterval.ts';
import { measureRow } from '../catalogue/intervalLength.ts';
import type { Interval } from '../model/calendar/interval.ts';
import type { Active, Catalogue, Crop, IntervalRow } from '../schema/catalogue.ts';
import type { Clause, TracedClause } from '../schema/clauses.ts';
import type { FieldCountry } from '../schema/codes.ts';

/** An interval with the conditions that a label ties it to, and where they stand. */
export interface LabelLine extends ConditionedInterval {
  readonly clauses: readonly (Clause | TracedClause)[];
  /** The catalogue's row behind it; null for the user's own label. */
  readonly row: IntervalRow | null;
  /** False where it stands beside an interval that the user gave, and moves no date. */
  readonly setsDate: boolean;
}

/**
 * The catalogue's label rows of a pair, where any of them carries conditions; none where none does.
 *
 * @param used the interval in use; stands in for a row that gives no length
 * @param isOwn true where it is the user's own: then the rows are shown and set nothing
 */
export function catalogueLines(
  catalogue: Catalogue,
  active: Active | null,
  crop: Crop | null,
  country: FieldCountry,
  used: Interval,
  isOwn: boolean,
): LabelLine[] {
  if (active === null || crop === null) return [];
  const rows = countingRows(catalogue, active, crop, country);
  if (rows.every(({ clauses }) => clauses.length === 0)) return [];
  return rows.map((row) => {
    const { longest = used, shortest = used } = measureRow(row) ?? {};
    return { interval: longest, shortest, clauses: row.clauses, row, setsDate: !isOwn };
  });
}
