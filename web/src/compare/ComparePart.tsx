import { useCallback } from 'preact/hooks';
import { GoneNote } from '../answer/ProblemNote.tsx';
import { Skeleton } from '../answer/Skeleton.tsx';
import type { QuestionInput } from '../api/contract.ts';
import { useStart } from '../api/useStart.ts';
import { useFirstQuestion } from '../shell/useFirstQuestion.ts';
import { useHeldAddress } from '../shell/useHeldAddress.ts';
import { ComparePlace } from './ComparePlace.tsx';
import { COMPARE } from './compareAddress.ts';
import '../style/tables.css';
import '../style/compare.css';

/** The place where residuals stand side by side: waits for what it needs. */
export function ComparePart() {
  const held = useHeldAddress(COMPARE);
  const { start, gone } = useStart();
  const { value, set, units } = held;
  const take = useCallback(
    (question: QuestionInput) => set({ question, picks: null, all: false, sort: null }, 'replace'),
    [set],
  );
  useFirstQuestion(start, value?.question ?? null, units, take);
  return start && value ? (
    <ComparePlace start={start} held={held} asked={value} />
  ) : (
    <div class="desk">
      <div class="margin" />
      <main class="page">{gone ? <GoneNote /> : <Skeleton />}</main>
    </div>
  );
}
