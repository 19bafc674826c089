import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import type { Answer, QuestionInput } from '../api/contract.ts';
import { SeasonCharts } from '../charts/SeasonCharts.tsx';
import type { Move } from '../charts/useMarker.ts';
import { YearsChart } from '../charts/YearsChart.tsx';
import { openIntervals } from '../handout/openIntervals.ts';
import { SaveOneFile } from '../handout/SaveOneFile.tsx';
import { Honest } from '../honest/Honest.tsx';
import { encodeAddress } from '../question/address.ts';
import { Alternatives, type Change } from '../reasons/Alternatives.tsx';
import { Conditions } from '../reasons/Conditions.tsx';
import { Evidence } from '../reasons/Evidence.tsx';
import { Story } from '../reasons/Story.tsx';
import { Why } from '../reasons/Why.tsx';
import type { Units } from '../units/units.ts';
import { Words } from '../words/Words.tsx';
import { Basis } from './Basis.tsx';
import { Cautions } from './Cautions.tsx';
import { OddsLine } from './OddsLine.tsx';
import { Sentence } from './Sentence.tsx';
import { Sources } from './Sources.tsx';
import { Thirds } from './Thirds.tsx';

interface AnswerPageProps {
  readonly answer: Answer;
  readonly question: QuestionInput;
  readonly units: Units;
  /** Why the answer is not that of the present question; null where it is. */
  readonly stale: string | null;
  readonly move: Move;
  readonly change: Change;
}

/** The answer, first in words, then drawn, then in all that it rests on. */
export function AnswerPage({ answer, question, units, stale, move, change }: AnswerPageProps) {
  const [picked, pick] = useState<number | null>(null);
  const known = answer.years.some(({ year }) => year === picked) ? picked : null;
  const held = useRef(change);
  held.current = change;
  const latest = useCallback((part: Parameters<Change>[0]) => held.current(part), []);
  // Made anew with the answer only: the marker moves over it many times a second.
  const rest = useMemo(
    () => (
      <>
        {answer.years.length > 0 && (
          <section class="years" aria-label="The years">
            <YearsChart answer={answer} units={units} picked={known} pick={pick} />
            <Thirds answer={answer} units={units} />
          </section>
        )}
        <Why answer={answer} />
        <Conditions answer={answer} units={units} />
        <Evidence answer={answer} />
        <Story answer={answer} units={units} />
        <Honest answer={answer} />
        <Alternatives answer={answer} change={latest} />
        <Cautions cautions={answer.cautions} />
        <p class="hand-on">
          <a href={`/sheet${encodeAddress(answer.inputs.question, units)}`} data-testid="to-sheet">
            The sheet for the grower, to print
          </a>
          {openIntervals(answer).length === 0 ? (
            <SaveOneFile answer={answer} field={null} />
          ) : (
            <a href={`/sheet${encodeAddress(answer.inputs.question, units)}`} data-testid="file-wants-label">
              Save this answer as one file: first confirm its interval from your label
            </a>
          )}
        </p>
        <div class="folds">
          <Basis answer={answer} units={units} />
          <Words />
        </div>
        <Sources answer={answer} />
      </>
    ),
    [answer, units, known, latest],
  );
  return (
    <article class="answer" data-stale={stale === null ? undefined : ''}>
      {stale && (
        <p class="stale" data-testid="stale">
          {stale}
        </p>
      )}
      <Sentence answer={answer} />
      {!answer.season && <OddsLine answer={answer} />}
      {answer.carryoverModelled && answer.season && (
        <SeasonCharts
          answer={{ ...answer, season: answer.season }}
          question={question}
          units={units}
          picked={known}
          move={move}
        />
      )}
      {rest}
    </article>
  );
}
