import { useMemo } from 'preact/hooks';
import { keepTogether } from '../answer/oddsInWords.ts';
import type { Comparison } from '../api/contract.ts';
import { saveJson, saveTable } from '../charts/saveFile.ts';
import { AnswerHead } from '../shell/AnswerHead.tsx';
import { CopyLink } from '../shell/CopyLink.tsx';
import { rainText, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { CompareTable, TableTerms } from './CompareTable.tsx';
import { ControlChart } from './ControlChart.tsx';
import { type CompareAsked, isAsked, namedRows } from './compareAddress.ts';
import { compareStem, FILE_COLUMNS, fileRows } from './compareFiles.ts';
import { activationSentence, fittingWords } from './compareWords.ts';
import { NotJudged } from './NotJudged.tsx';
import { PlainCautions } from './PlainCautions.tsx';
import { picksOf, shownRows, togglePick } from './picks.ts';
import { SeasonOverlay } from './SeasonOverlay.tsx';

interface CompareAnswerProps {
  readonly answer: Comparison;
  readonly finding: string;
  readonly asked: CompareAsked;
  readonly units: Units;
  readonly stale: string | null;
  readonly look: (part: Partial<CompareAsked>) => void;
}

/** How many years of weather the odds rest on. */
function yearsBehind({ residuals }: Comparison): string {
  const years = residuals.flatMap(({ oddsRange }) => oddsRange?.years ?? []);
  const [least, most] = [Math.min(...years), Math.max(...years)];
  if (years.length === 0) return '';
  return `, over ${least === most ? most : `${least} to ${most}`} years of weather`;
}

/** The residuals side by side: in a sentence, drawn, as a table, over the season. */
export function CompareAnswer({ answer: given, finding, asked, units, stale, look }: CompareAnswerProps) {
  const { question } = asked;
  const dates = useDates();
  const answer = useMemo(() => ({ ...given, residuals: namedRows(given.residuals) }), [given]);
  const own = answer.residuals.find((row) => isAsked(row, question))?.residual;
  const picks = picksOf(answer.residuals, asked.picks, own);
  const stem = compareStem(answer);
  const activation = activationSentence(answer, units);
  const { controlFractionLeft, activationRainMm, activationDays } = answer.question.assume;
  const ruledOut = answer.residuals.filter(({ labelAllows }) => !labelAllows).length;
  const ownFigures = [question.interval, question.halfLifeDays, question.rateGramsPerHa].some(
    (figure) => figure !== undefined,
  );
  return (
    <article class="answer compare" data-stale={stale === null ? undefined : ''}>
      <AnswerHead stale={stale} sentence={finding} rest={fittingWords(answer)} />
      {activation && (
        <p class="advice" data-testid="activation">
          {keepTogether(activation)}
        </p>
      )}
      <ControlChart answer={answer} picks={picks} all={asked.all} />
      <p class="small" data-testid="taken">
        Odds are of seasons and soils like this{yearsBehind(answer)}. Weed control is taken to end when{' '}
        {Number((controlFractionLeft * 100).toPrecision(3))} % of the dose is left in a middling soil, and to
        begin with {rainText(activationRainMm, units)} of water within {activationDays} days: our own
        assumptions, to be changed in the question.
        {ownFigures &&
          ` The figures of your own that you gave for ${question.residual} count on its field page only; here all stand on the catalogue’s or on your label entries.`}
      </p>
      {answer.residuals.length > 0 ? (
        <>
          <CompareTable
            residuals={shownRows(answer.residuals, asked.all)}
            question={question}
            picks={picks}
            toggle={(residual) => look({ picks: togglePick(picks, residual) })}
            sort={asked.sort}
            sortBy={(sort) => look({ sort })}
            units={units}
            dates={dates}
          />
          <div class="do-row chart-tools">
            {ruledOut > 0 && ruledOut < answer.residuals.length && (
              <button
                type="button"
                class="small-button"
                data-testid="show-all"
                aria-pressed={asked.all}
                onClick={() => look({ all: !asked.all })}
              >
                {asked.all ? 'Leave out' : 'Show'} the {ruledOut} that the label rules out
              </button>
            )}
            <button
              type="button"
              class="quiet"
              onClick={() => saveTable(`${stem}.csv`, FILE_COLUMNS, fileRows(answer))}
            >
              Table as CSV
            </button>
            <button type="button" class="quiet" onClick={() => saveJson(`${stem}.json`, answer)}>
              Answer as JSON
            </button>
            <CopyLink />
          </div>
          <TableTerms />
          <SeasonOverlay
            question={question}
            crop={answer.crop}
            oddsLimit={answer.question.oddsLimit}
            picked={picks.flatMap((name) => answer.residuals.find(({ residual }) => residual === name) ?? [])}
            stem={stem}
            source={answer.cautions[0] ?? ''}
            dates={dates}
            ready={stale === null}
          />
        </>
      ) : (
        <p class="note" data-testid="empty">
          No residual of the catalogue has an interval before {answer.crop} here, so nothing can be set side
          by side. The label of the product in your shed has one.
        </p>
      )}
      <NotJudged all={answer.unjudged} title={`Not judged: ${answer.unjudged.length} residuals`} />
      <PlainCautions cautions={answer.cautions} />
    </article>
  );
}
