import { useEffect, useMemo } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import { Skeleton } from '../answer/Skeleton.tsx';
import { isUnanswerable, Unanswerable } from '../answer/Unanswerable.tsx';
import { useAnswer } from '../api/useAnswer.ts';
import { decodeAddress, encodeAddress } from '../question/address.ts';
import { go, keepField, useLocation } from '../shell/places.ts';
import '../style/handout.css';
import { useUnits } from '../units/useUnits.ts';
import { ConfirmInterval } from './ConfirmInterval.tsx';
import { Handout } from './Handout.tsx';

/** The sheet for the grower and the file: one page to print, once the interval is confirmed from a label. */
export function HandoutPlace() {
  const { search } = useLocation();
  const units = useUnits();
  const { question } = useMemo(() => decodeAddress(search), [search]);
  const { answer, pending, problem, gone, retry } = useAnswer(question);
  useEffect(() => {
    document.title = 'Sheet for the grower · Drywake';
  }, []);
  // The field’s own link leads back to the question of this sheet.
  useEffect(() => {
    if (question !== null) keepField(search);
  }, [question, search]);

  if (question === null) {
    return (
      <main class="lone">
        <h1 class="place-title">A sheet needs a question</h1>
        <p>
          Ask it <a href="/">on the field’s page</a>; the sheet is at the end of its answer.
        </p>
      </main>
    );
  }
  const confirm = (interval: string) =>
    go(`/sheet${encodeAddress({ ...question, interval }, units)}`, 'replace');
  const fresh = answer !== null && !pending && problem === null && !gone;
  return (
    <main class="lone handout-place">
      {gone && <GoneNote retry={retry} />}
      {isUnanswerable(problem) ? (
        <Unanswerable problem={problem} />
      ) : (
        problem && <ProblemNote problem={problem} />
      )}
      {problem && answer && <ConfirmInterval answer={answer} confirm={confirm} />}
      {!answer && !problem && !gone && <Skeleton />}
      {fresh && !answer.inputs.interval.confirmed && <ConfirmInterval answer={answer} confirm={confirm} />}
      {fresh && answer.inputs.interval.confirmed && (
        <>
          <div class="handout-tools">
            <button type="button" class="button" data-testid="print" onClick={() => window.print()}>
              Print the sheet
            </button>
            <a href={`/${search}`}>Back to the field</a>
          </div>
          <Handout answer={answer} question={question} units={units} />
        </>
      )}
    </main>
  );
}
