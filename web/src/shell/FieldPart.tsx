import { useEffect } from 'preact/hooks';
import { GoneNote } from '../answer/ProblemNote.tsx';
import { Skeleton } from '../answer/Skeleton.tsx';
import { useStart } from '../api/useStart.ts';
import { FieldPlace } from './FieldPlace.tsx';
import { keepField } from './places.ts';
import { useAddress } from './useAddress.ts';

/** The place of the question: waits for what it needs, and asks the worked example where the address asks nothing. */
export function FieldPart() {
  const address = useAddress();
  const { start, gone } = useStart();
  const { question, setQuestion } = address;

  useEffect(() => {
    if (start && question === null) setQuestion(start.example.question, 'replace');
  }, [start, question, setQuestion]);
  // However the place is left, by a step back too.
  useEffect(() => {
    if (question !== null && location.pathname === '/') keepField(location.search);
  });

  return start && question ? (
    <FieldPlace start={start} address={address} question={question} />
  ) : (
    <div class="desk">
      <div class="margin" />
      <main class="page">{gone ? <GoneNote /> : <Skeleton />}</main>
    </div>
  );
}
