import { useMemo } from 'preact/hooks';
import type { CropGrid } from '../api/contract.ts';
import { useAsked } from '../api/useAsked.ts';
import type { Start } from '../api/useStart.ts';
import { missingWords } from '../question/defaults.ts';
import { QuestionDesk } from '../shell/QuestionDesk.tsx';
import type { Held } from '../shell/useHeldAddress.ts';
import { useLook } from '../shell/useLook.ts';
import { useTitle } from '../shell/useTitle.ts';
import { useDates } from '../units/useDates.ts';
import { CropsAnswer } from './CropsAnswer.tsx';
import { CropsForm } from './CropsForm.tsx';
import { type CropsAsked, cropGridOf } from './cropsAddress.ts';
import { cropsFinding, cropsInWords } from './cropsWords.ts';
import { columnAround, columnsOf } from './gridView.ts';

interface CropsPlaceProps {
  readonly start: Start;
  readonly held: Held<CropsAsked>;
  readonly asked: CropsAsked;
}

const NEEDED = ['station', 'appliedOn', 'residual'] as const;

/** Which crops can go in when, after one treatment. */
export function CropsPlace({ start, held, asked }: CropsPlaceProps) {
  const { units, visit, problem: unread } = held;
  const { question, years, span } = asked;
  const spanned = Boolean(span.plantFrom && span.plantTo);
  const missing = missingWords(question, spanned ? NEEDED : [...NEEDED, 'plantOn']);
  const state = useAsked<CropGrid>('/api/crops', missing.length === 0 ? cropGridOf(asked) : null);
  const dates = useDates();
  const { look, change } = useLook(held, asked, 'push');
  useTitle(`Crops after ${question.residual ?? 'a residual'}`);
  const { answer } = state;
  const finding = useMemo(() => {
    if (answer === null) return null;
    const { columns } = columnsOf(answer.dates);
    const column = columns[columnAround(columns, question.plantOn) ?? 0];
    return cropsFinding(answer, column, question.crop, years, dates);
  }, [answer, question.plantOn, question.crop, years, dates]);
  return (
    <QuestionDesk
      start={start}
      question={question}
      units={units}
      change={change}
      form={<CropsForm asked={asked} look={look} />}
      visit={visit}
      summary={`Crops after ${question.residual}`}
      short={finding === null ? '' : `${finding.head} ${finding.rest}`}
      inWords={() => cropsInWords(question, start.choices.stations, dates)}
      unread={unread}
      missing={missing}
      asked={state}
    >
      {(stale) =>
        answer &&
        finding && (
          <CropsAnswer
            answer={answer}
            finding={finding}
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
