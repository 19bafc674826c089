import { MissingDataError } from '../../errors.ts';
import { median } from './quantile.ts';

/**
 * Demand: the breakdown days that a label interval is worth. [breakdown days]
 *
 * Equation   D_L = max(f·L, median over the years of S_L(t_y + L) − S_L(t_y))
 * Symbols    labelBreakdownDays = the label run's breakdown days over the interval, one per historical year
 *            L = intervalDays, length of the interval [d], > 0; f = floorFraction [breakdown days/d], 0.1
 * Valid      at least one year, else MissingDataError NO_YEARS; the floor keeps frozen ground from counting as a label's days
 *            (our assumption)
 * Source     idea of our own: a label interval is a number of breakdown days
 * Checked    test/cases/crossCheck.test.ts, column "demand"
 * @example demandBreakdownDays([30, 40, 50], 120, 0.1) // 40
 */
export function demandBreakdownDays(
  labelBreakdownDays: readonly number[],
  intervalDays: number,
  floorFraction: number,
): number {
  if (labelBreakdownDays.length === 0) {
    throw new MissingDataError('NO_YEARS', 'There is no usable year to work out what the label asks for.', {
      hint: 'Choose a station with a longer record or a wider base period.',
    });
  }
  return Math.max(floorFraction * intervalDays, median(labelBreakdownDays));
}
