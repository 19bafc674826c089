import { useMemo } from 'preact/hooks';
import type { Comparison } from '../api/contract.ts';
import { useAsked } from '../api/useAsked.ts';
import type { Start } from '../api/useStart.ts';
import { missingWords } from '../question/defaults.ts';
import { QuestionDesk } from '../shell/QuestionDesk.tsx';
import type { Held } from '../shell/useHeldAddress.ts';
import { useLook } from '../shell/useLook.ts';
import { useTitle } from '../shell/useTitle.ts';
import { useDates } from '../units/useDates.ts';
import { CompareAnswer } from './CompareAnswer.tsx';
import { CompareForm } from './CompareForm.tsx';
import { type CompareAsked, comparisonOf } from './compareAddress.ts';
import { comparisonFinding, comparisonInWords } from './compareWords.ts';

interface ComparePlaceProps {
  readonly start: Start;
  readonly held: Held<CompareAsked>;
  readonly asked: CompareAsked;
}

const NEEDED = ['station', 'appliedOn', 'crop', 'plantOn'] as const;

/** Every residual before one crop on one date. */
export function ComparePlace({ start, held, asked }: ComparePlaceProps) {
  const { units, visit, problem: unread } = held;
  const { question } = asked;
  const missing = missingWords(question, NEEDED);
  const state = useAsked<Comparison>('/api/compare', missing.length === 0 ? comparisonOf(question) : null);
  const dates = useDates();
  const { look, change } = useLook(held, asked, 'replace');
  useTitle(`Residuals before ${question.crop ?? 'the next crop'}`);
  const answer = state.answer;
  const short = useMemo(() => (answer ? comparisonFinding(answer, dates) : ''), [answer, dates]);
  return (
    <QuestionDesk
      start={start}
      question={question}
      units={units}
      change={change}
      form={<CompareForm />}
      visit={visit}
      summary={`Residuals before ${question.crop}`}
      short={short}
      inWords={() => comparisonInWords(question, start.choices.stations, dates)}
      unread={unread}
      missing={missing}
      asked={state}
    >
      {(stale) =>
        answer && (
          <CompareAnswer
            answer={answer}
            finding={short}
            asked={asked}
            units={units}
            stale={stale}
            look={look}
          />
        )
      }
    </QuestionDesk>
  );
}
