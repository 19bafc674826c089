import { useCallback } from 'preact/hooks';
import { GoneNote } from '../answer/ProblemNote.tsx';
import { Skeleton } from '../answer/Skeleton.tsx';
import type { QuestionInput } from '../api/contract.ts';
import { useStart } from '../api/useStart.ts';
import { useFirstQuestion } from '../shell/useFirstQuestion.ts';
import { useHeldAddress } from '../shell/useHeldAddress.ts';
import { RegionPlace } from './RegionPlace.tsx';
import { REGION, regionFrom } from './regionAddress.ts';
import '../style/tables.css';
import '../style/region.css';

/** The place of the map: waits for what it needs. */
export function RegionPart() {
  const held = useHeldAddress(REGION);
  const { start, gone } = useStart();
  const { value, set, units } = held;
  const take = useCallback((question: QuestionInput) => set(regionFrom(question), 'replace'), [set]);
  useFirstQuestion(start, value?.question ?? null, units, take);
  return start && value ? (
    <RegionPlace start={start} held={held} asked={value} />
  ) : (
    <div class="desk">
      <div class="margin" />
      <main class="page">{gone ? <GoneNote /> : <Skeleton />}</main>
    </div>
  );
}
