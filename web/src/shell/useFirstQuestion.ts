import { useEffect } from 'preact/hooks';
import type { QuestionInput } from '../api/contract.ts';
import type { Start } from '../api/useStart.ts';
import { decodeAddress, encodeAddress } from '../question/address.ts';
import type { Units } from '../units/units.ts';
import { keepField, lastFieldSearch } from './places.ts';

/**
 * Where an address asks nothing, the question that was last asked stands in, else the worked example; and what is
 * asked here is kept for the other places.
 */
export function useFirstQuestion(
  start: Start | null,
  question: QuestionInput | null,
  units: Units,
  take: (question: QuestionInput) => void,
): void {
  useEffect(() => {
    if (start && question === null) take(decodeAddress(lastFieldSearch()).question ?? start.example.question);
  }, [start, question, take]);
  useEffect(() => {
    if (question !== null) keepField(encodeAddress(question, units));
  }, [question, units]);
}
