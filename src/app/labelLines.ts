import type { ConditionedInterval } from '../analysis/labelConditions.ts';
import { countingRows } from '../catalogue/chooseInterval.ts';
import { measureRow } from '../catalogue/intervalLength.ts';
import type { Interval } from '../model/calendar/interval.ts';
import type { Active, Catalogue, Crop } from '../schema/catalogue.ts';
import type { Clause, TracedClause } from '../schema/clauses.ts';
import type { FieldCountry } from '../schema/codes.ts';

/** An interval with the conditions that a label ties it to, and where they stand. */
export interface LabelLine extends ConditionedInterval {
  readonly clauses: readonly (Clause | TracedClause)[];
  /** False where it stands beside an interval that the user gave, and moves no date. */
  readonly setsDate: boolean;
}

/**
 * The catalogue's label rows of a pair that carry conditions.
 * @param own the user's own interval, where there is one: then the rows are shown and set nothing
 */
export function catalogueLines(
  catalogue: Catalogue,
  active: Active | null,
  crop: Crop | null,
  country: FieldCountry,
  own: Interval | null,
): LabelLine[] {
  if (active === null || crop === null) return [];
  return countingRows(catalogue, active, crop, country)
    .filter(({ clauses }) => clauses.length > 0)
    .flatMap((row) => {
      const measured = measureRow(row);
      const interval = measured?.longest ?? own;
      if (interval === null) return [];
      return [
        { interval, shortest: measured?.shortest ?? interval, clauses: row.clauses, setsDate: own === null },
      ];
    });
}
