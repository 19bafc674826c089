import { useState } from 'preact/hooks';
import type { Answer, QuestionInput } from '../api/contract.ts';
import { useDates } from '../units/useDates.ts';
import { ChangesTable } from './ChangesTable.tsx';
import { OddsLimitHelper } from './OddsLimitHelper.tsx';
import { OtherCrops } from './OtherCrops.tsx';
import { OtherResiduals } from './OtherResiduals.tsx';
import { useAlternatives } from './useAlternatives.ts';

/** Changes a part of the question. */
export type Change = (part: Partial<QuestionInput>) => void;

interface AlternativesProps {
  readonly answer: Answer;
  readonly change: Change;
}

/** What else could be done; asked of the server when first opened, for it takes longer than the answer itself. */
export function Alternatives({ answer, change }: AlternativesProps) {
  const [opened, setOpened] = useState(false);
  const [open, setOpen] = useState(false);
  return (
    <section class="reasons" aria-labelledby="alternatives-title" data-testid="alternatives">
      <h2 id="alternatives-title" class="section-title">
        What else you could do
      </h2>
      <details
        class="fold"
        onToggle={({ currentTarget }) => {
          setOpen(currentTarget.open);
          setOpened(opened || currentTarget.open);
        }}
      >
        <summary data-testid="open-alternatives">Another date, another crop, another residual</summary>
        {opened && <Body answer={answer} change={change} wanted={open} />}
      </details>
      <details class="fold">
        <summary data-testid="open-limit">What waiting costs and what it saves: your odds limit</summary>
        <OddsLimitHelper present={answer.inputs.question.oddsLimit} change={change} />
      </details>
    </section>
  );
}

function Body({ answer, change, wanted }: AlternativesProps & { wanted: boolean }) {
  const dates = useDates();
  const { question } = answer.inputs;
  const { alternatives, failed } = useAlternatives(question, wanted);
  if (failed !== null) return <p class="fold-body">{failed}</p>;
  if (alternatives === null) {
    return (
      <p class="fold-body" data-testid="alternatives-loading">
        Going through all crops and residuals…
      </p>
    );
  }
  const { asAsked, crop, otherCrops, cropsUnjudged, otherResiduals, overlap, soilPh, notes } = alternatives;
  const { clearDate, waitDays } = asAsked;
  return (
    <div class="fold-body alternatives" data-testid="alternatives-body">
      <div class="alternatives-date">
        <h3>Another date for {crop}</h3>
        {answer.mix.length > 0 && <p>Of the mix the most restricted species counts in each of these.</p>}
        {clearDate === null || waitDays === null ? (
          <p>No date within the search brings the odds down to your limit.</p>
        ) : waitDays === 0 ? (
          <p>The date asked about is already within label and limit.</p>
        ) : (
          <p>
            {dates.full(clearDate)}, {waitDays} {waitDays === 1 ? 'day' : 'days'} later, is within label and
            limit.{' '}
            <button type="button" class="small-button" onClick={() => change({ plantOn: clearDate })}>
              Ask about {dates.full(clearDate)}
            </button>
          </p>
        )}
      </div>
      <OtherCrops rows={otherCrops} unjudged={cropsUnjudged} plantOn={question.plantOn} change={change} />
      <OtherResiduals rows={otherResiduals} crop={crop} plantOn={question.plantOn} />
      <ChangesTable
        testId="overlap"
        caption="Where passes overlap"
        head="Dose"
        rows={overlap.map(({ overlapFactor, ...row }) => ({ ...row, name: `× ${overlapFactor}` }))}
        plantOn={question.plantOn}
      />
      <ChangesTable
        testId="soil-ph"
        caption="In zones of another soil pH"
        head="pH"
        rows={soilPh.map(({ soilPh: ph, ...row }) => ({ ...row, name: ph.toFixed(1) }))}
        plantOn={question.plantOn}
      />
      {notes.length > 0 && (
        <ul class="rule-list">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
