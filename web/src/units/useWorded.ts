import type { Problem } from '../api/contract.ts';
import { type DateWords, datesReworded } from './dates.ts';
import { limitsReworded } from './limitsReworded.ts';
import type { Units } from './units.ts';
import { useDates } from './useDates.ts';
import { useUnits } from './useUnits.ts';

type Words = Pick<Problem, 'message' | 'hint'> & Partial<Pick<Problem, 'details'>>;

/**
 * A refusal with its dates in the reader's style and its limits in the reader's units: either can be typed on the page,
 * so its hint too.
 */
function worded<T extends Words>(problem: T, dates: DateWords, units: Units): T {
  const { message, hint } = limitsReworded(problem, units);
  return { ...problem, message: datesReworded(message, dates), hint: datesReworded(hint, dates) };
}

/** The way to word refusals, kept up to date with the reader's units and style of dates. */
export function useWorded(): <T extends Words>(problem: T) => T {
  const dates = useDates();
  const units = useUnits();
  return (problem) => worded(problem, dates, units);
}
