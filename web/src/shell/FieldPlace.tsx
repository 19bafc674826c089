import { useCallback } from 'preact/hooks';
import { AnswerPage } from '../answer/AnswerPage.tsx';
import { sayOdds } from '../answer/oddsInWords.ts';
import type { Answer, QuestionInput } from '../api/contract.ts';
import { useAnswer } from '../api/useAnswer.ts';
import type { Start } from '../api/useStart.ts';
import { sayDate } from '../question/calendar.ts';
import { missingWords } from '../question/defaults.ts';
import { QuestionForm } from '../question/QuestionForm.tsx';
import { questionInWords } from '../question/questionInWords.ts';
import { Onward } from './Onward.tsx';
import { QuestionDesk } from './QuestionDesk.tsx';
import type { AddressState } from './useAddress.ts';
import { useTitle } from './useTitle.ts';

interface FieldPlaceProps {
  readonly start: Start;
  readonly address: AddressState;
  readonly question: QuestionInput;
}

/** The question about one field, and its answer. */
export function FieldPlace({ start, address, question }: FieldPlaceProps) {
  const { units, visit, problem, setQuestion } = address;
  const missing = missingWords(question);
  const asked = useAnswer(missing.length === 0 ? question : null);
  const { answer } = asked;
  const change = useCallback(
    (part: Partial<QuestionInput>) => setQuestion({ ...question, ...part }, 'push'),
    [question, setQuestion],
  );
  useTitle(`${question.crop ?? 'Next crop'} after ${question.residual ?? 'a residual'}`);
  return (
    <QuestionDesk
      start={start}
      question={question}
      units={units}
      change={change}
      form={<QuestionForm answer={answer} />}
      visit={visit}
      summary={`${question.residual}, then ${question.crop}`}
      short={answer ? shortAnswer(answer) : ''}
      inWords={() => questionInWords(question, start.choices.stations)}
      unread={problem}
      missing={missing}
      asked={asked}
      inSight={IN_THE_SENTENCE}
      below={answer && <Onward question={question} />}
    >
      {(stale) =>
        answer && (
          <AnswerPage
            answer={answer}
            question={question}
            units={units}
            stale={stale}
            change={change}
            move={(plantOn, entry) => setQuestion({ ...question, plantOn }, entry)}
          />
        )
      }
    </QuestionDesk>
  );
}

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

/** The answer in a few words, to be spoken. */
function shortAnswer({ oddsAtPlanting, inputs, clearDate }: Answer): string {
  const { plantOn } = inputs.question;
  if (oddsAtPlanting === null) return `No carryover is reckoned for ${inputs.crop}.`;
  const clear = clearDate === null ? 'no clear date' : `clear ${sayDate(clearDate)}`;
  return `Planting ${sayDate(plantOn)}: ${sayOdds(oddsAtPlanting)}, ${clear}.`;
}
