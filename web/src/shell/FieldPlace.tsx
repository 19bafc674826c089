import { useCallback } from 'preact/hooks';
import { AnswerPage } from '../answer/AnswerPage.tsx';
import { sayOdds } from '../answer/oddsInWords.ts';
import type { Answer, QuestionInput } from '../api/contract.ts';
import { useAnswer } from '../api/useAnswer.ts';
import type { Start } from '../api/useStart.ts';
import { missingWords } from '../question/defaults.ts';
import { QuestionForm } from '../question/QuestionForm.tsx';
import { questionInWords } from '../question/questionInWords.ts';
import type { DateWords } from '../units/dates.ts';
import { useDates } from '../units/useDates.ts';
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
  const dates = useDates();
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
      short={answer ? shortAnswer(answer, dates) : ''}
      inWords={() => questionInWords(question, start.choices.stations, dates)}
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
function shortAnswer({ oddsAtPlanting, inputs, clearDate }: Answer, dates: DateWords): string {
  const { plantOn } = inputs.question;
  if (oddsAtPlanting === null) return `No carryover is reckoned for ${inputs.crop}.`;
  const clear = clearDate === null ? 'no clear date' : `clear ${dates.full(clearDate)}`;
  return `Planting ${dates.full(plantOn)}: ${sayOdds(oddsAtPlanting)}, ${clear}.`;
}
