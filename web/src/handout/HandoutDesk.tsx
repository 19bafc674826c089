import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import { Skeleton } from '../answer/Skeleton.tsx';
import { isUnanswerable, Unanswerable } from '../answer/Unanswerable.tsx';
import type { FieldRecord, QuestionInput } from '../api/contract.ts';
import { useAnswer } from '../api/useAnswer.ts';
import { missingWords } from '../question/defaults.ts';
import type { Units } from '../units/units.ts';
import { ConfirmInterval } from './ConfirmInterval.tsx';
import { Handout } from './Handout.tsx';
import { type OpenInterval, openIntervals } from './openIntervals.ts';
import { SaveOneFile } from './SaveOneFile.tsx';
import '../style/handout.css';

interface HandoutDeskProps {
  readonly question: QuestionInput;
  readonly units: Units;
  /** The kept field that the sheet is about; null where the question stands by itself. */
  readonly field: Pick<FieldRecord, 'id' | 'farm' | 'name' | 'areaHa'> | null;
  readonly back: string;
  /** Takes an interval as the user has read it from the label. */
  readonly confirm: (open: OpenInterval, interval: string) => void;
}

/** The sheet of a question, or the intervals that must be confirmed before it prints. */
export function HandoutDesk({ question, units, field, back, confirm }: HandoutDeskProps) {
  const missing = missingWords(question);
  const { answer, pending, problem, gone, retry } = useAnswer(missing.length === 0 ? question : null);
  const fresh = answer !== null && !pending && problem === null && !gone;
  const open = answer === null ? [] : openIntervals(answer);
  const [first] = open;
  return (
    <main class="lone handout-place">
      {gone && <GoneNote retry={retry} />}
      {isUnanswerable(problem) ? (
        <Unanswerable problem={problem} />
      ) : (
        problem && <ProblemNote problem={problem} />
      )}
      {missing.length > 0 && (
        <p class="note">
          A sheet needs the whole question: fill in {missing.join(', ')}{' '}
          <a href={back}>on the field’s page</a>.
        </p>
      )}
      {!answer && !problem && !gone && missing.length === 0 && <Skeleton />}
      {answer && (fresh || problem !== null) && first !== undefined && (
        <ConfirmInterval
          key={first.other ?? 'main'}
          crop={answer.inputs.crop}
          open={first}
          more={open.length - 1}
          confirm={(interval) => confirm(first, interval)}
        />
      )}
      {fresh && first === undefined && (
        <>
          <div class="handout-tools">
            <button type="button" class="button" data-testid="print" onClick={() => window.print()}>
              Print the sheet
            </button>
            <SaveOneFile answer={answer} field={field?.id ?? null} />
            <a href={back}>Back to the field</a>
          </div>
          <Handout answer={answer} question={question} units={units} field={field} />
        </>
      )}
    </main>
  );
}
