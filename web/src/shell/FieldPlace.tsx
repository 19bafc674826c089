import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import { AnswerPage } from '../answer/AnswerPage.tsx';
import { sayOdds } from '../answer/oddsInWords.ts';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import { Skeleton } from '../answer/Skeleton.tsx';
import { StatusLine } from '../answer/StatusLine.tsx';
import { isUnanswerable, Unanswerable } from '../answer/Unanswerable.tsx';
import type { Answer, QuestionInput } from '../api/contract.ts';
import { useAnswer } from '../api/useAnswer.ts';
import type { Start } from '../api/useStart.ts';
import { sayDate } from '../question/calendar.ts';
import { REQUIRED_FIELDS } from '../question/defaults.ts';
import { keepDrafts, keptDrafts } from '../question/drafts.ts';
import { FormContext, type FormState, refusedField } from '../question/FormContext.ts';
import { QuestionForm } from '../question/QuestionForm.tsx';
import { QuestionSheet } from '../question/QuestionSheet.tsx';
import { questionInWords } from '../question/questionInWords.ts';
import { FieldLine } from './FieldLine.tsx';
import { Onward } from './Onward.tsx';
import type { AddressState } from './useAddress.ts';
import { useMedia } from './useMedia.ts';

interface FieldPlaceProps {
  readonly start: Start;
  readonly address: AddressState;
  readonly question: QuestionInput;
}

/** The question about one field, and its answer. */
export function FieldPlace({ start, address, question }: FieldPlaceProps) {
  const { choices, example } = start;
  const { units, setQuestion } = address;
  const desk = useMedia('(min-width: 62rem)');
  const missing = REQUIRED_FIELDS.filter((field) => !question[field]);
  const { answer, pending, problem, gone, retry } = useAnswer(missing.length === 0 ? question : null);

  const [typed, setTyped] = useState<Record<string, string>>(() => keptDrafts(location.search));
  useEffect(() => keepDrafts(location.search, typed), [typed, question]);
  const keepTyped = useCallback(
    (field: string, text: string | null) =>
      setTyped(({ [field]: _, ...rest }) => (text === null ? rest : { ...rest, [field]: text })),
    [],
  );
  const form: FormState = useMemo(
    () => ({
      question,
      choices,
      units,
      change: (part) => setQuestion({ ...question, ...part }, 'push'),
      refusal: problem,
      typed,
      keepTyped,
    }),
    [question, choices, units, setQuestion, problem, typed, keepTyped],
  );

  const station = choices.stations.find(({ id }) => id === question.station);
  const besideField = desk && IN_THE_SENTENCE.has(refusedField(problem) ?? '');
  const short = answer ? shortAnswer(answer) : '';
  useEffect(() => {
    document.title = `${question.crop ?? 'Next crop'} after ${question.residual ?? 'a residual'} · Drywake`;
  }, [question.crop, question.residual]);
  const questionForm = <QuestionForm key={address.visit} answer={answer} />;
  return (
    <FormContext.Provider value={form}>
      <div class="desk">
        <aside class="margin">
          {desk ? (
            <>
              <h2 class="margin-title">The question</h2>
              {questionForm}
            </>
          ) : (
            <QuestionSheet summary={`${question.residual}, then ${question.crop}`} short={short}>
              {questionForm}
            </QuestionSheet>
          )}
        </aside>
        <main class="page">
          <FieldLine question={question} example={example} station={station} />
          {address.problem && <p class="note">{address.problem}</p>}
          {gone && <GoneNote retry={retry} />}
          {missing.length > 0 && (
            <p class="note">
              The question is not complete: fill in {missing.map((field) => NAMES[field]).join(', ')}.
            </p>
          )}
          {problem && !besideField && !isUnanswerable(problem) && <ProblemNote problem={problem} />}
          {isUnanswerable(problem) ? (
            <Unanswerable problem={problem} />
          ) : answer ? (
            <AnswerPage
              answer={answer}
              question={question}
              units={units}
              stale={staleWords({
                pending,
                refused: problem !== null,
                gone,
                unread: Object.keys(typed).length > 0,
              })}
              change={form.change}
              move={(plantOn, entry) => setQuestion({ ...question, plantOn }, entry)}
            />
          ) : (
            !problem && missing.length === 0 && !gone && <Skeleton />
          )}
          {answer && <Onward question={question} />}
          <p class="print-question">{questionInWords(question, choices.stations)}</p>
          <p class="print-address">{location.href}</p>
        </main>
      </div>
      <StatusLine text={problem ? problem.message : pending ? '' : short} />
    </FormContext.Provider>
  );
}

/** Fields whose blanks are always in sight on a desk, so that a refusal is read beside them. */
const IN_THE_SENTENCE: ReadonlySet<string> = new Set([
  'residual',
  'appliedOn',
  'rateFraction',
  'crop',
  'plantOn',
  'soilClass',
  'station',
  'interval',
  'oddsLimit',
]);

const NAMES: Record<(typeof REQUIRED_FIELDS)[number], string> = {
  station: 'the weather record',
  appliedOn: 'the date of spraying',
  residual: 'the residual',
  crop: 'the next crop',
  plantOn: 'the planting date',
};

function staleWords(why: {
  pending: boolean;
  refused: boolean;
  gone: boolean;
  unread: boolean;
}): string | null {
  if (why.refused || why.unread) return 'Answer to the last complete question';
  if (why.gone) return 'The last answer that came';
  if (why.pending) return 'The last answer, a new one is on its way';
  return null;
}

/** The answer in a few words, to be spoken. */
function shortAnswer({ oddsAtPlanting, inputs, clearDate }: Answer): string {
  const { plantOn } = inputs.question;
  if (oddsAtPlanting === null) return `No carryover is reckoned for ${inputs.crop}.`;
  const clear = clearDate === null ? 'no clear date' : `clear ${sayDate(clearDate)}`;
  return `Planting ${sayDate(plantOn)}: ${sayOdds(oddsAtPlanting)}, ${clear}.`;
}
