import { asking, useWording } from '../units/useDates.ts';
import type { Answer, QuestionInput } from './contract.ts';
import { type Asked, useAsked } from './useAsked.ts';

/** Changes that come faster than this are asked when they rest: the planting date is dragged. [ms] */
const SETTLE_MS = 90;

/** Keeps the answer in step with the question about one field. */
export function useAnswer(question: QuestionInput | null): Asked<Answer> & { retry: () => void } {
  return useAsked<Answer>(asking('/api/odds?with=season', useWording()), question, SETTLE_MS);
}
