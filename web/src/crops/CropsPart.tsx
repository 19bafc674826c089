import { useCallback } from 'preact/hooks';
import { GoneNote } from '../answer/ProblemNote.tsx';
import { Skeleton } from '../answer/Skeleton.tsx';
import type { QuestionInput } from '../api/contract.ts';
import { useStart } from '../api/useStart.ts';
import { useFirstQuestion } from '../shell/useFirstQuestion.ts';
import { useHeldAddress } from '../shell/useHeldAddress.ts';
import { CropsPlace } from './CropsPlace.tsx';
import { askedFrom, CROPS } from './cropsAddress.ts';
import '../style/tables.css';
import '../style/crops.css';

/** The place of the grid of crops by date: waits for what it needs. */
export function CropsPart() {
  const held = useHeldAddress(CROPS);
  const { start, gone } = useStart();
  const { value, set, units } = held;
  const take = useCallback((question: QuestionInput) => set(askedFrom(question), 'replace'), [set]);
  useFirstQuestion(start, value?.question ?? null, units, take);
  return start && value ? (
    <CropsPlace start={start} held={held} asked={value} />
  ) : (
    <div class="desk">
      <div class="margin" />
      <main class="page">{gone ? <GoneNote /> : <Skeleton />}</main>
    </div>
  );
}
