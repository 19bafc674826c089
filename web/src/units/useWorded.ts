import type { Problem } from '../api/contract.ts';
import { type DateWords, datesReworded } from './dates.ts';
import { useDates } from './useDates.ts';

/** A refusal with its dates in the reader's style: any style can be typed on the page, so its hint too. */
const worded = <T extends Pick<Problem, 'message' | 'hint'>>(problem: T, dates: DateWords): T => ({
  ...problem,
  message: datesReworded(problem.message, dates),
  hint: datesReworded(problem.hint, dates),
});

/** The way to word refusals, kept up to date with the reader's style of dates. */
export function useWorded(): <T extends Pick<Problem, 'message' | 'hint'>>(problem: T) => T {
  const dates = useDates();
  return (problem) => worded(problem, dates);
}
