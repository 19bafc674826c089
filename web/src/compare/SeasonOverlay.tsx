import { useMemo } from 'preact/hooks';
import { MS_PER_DAY, msOf } from '../../../src/chart/dateMs.ts';
import { curveAt } from '../../../src/chart/oddsSeason.ts';
import {
  OVERLAY_DASHES,
  type OverlaidSeason,
  overlayEnds,
  overlaySeasons,
} from '../../../src/chart/overlaySeasons.ts';
import type { Ruler } from '../../../src/chart/ruler.ts';
import { type ChartTokens, LIGHT_TOKENS, PAGE_TOKENS } from '../../../src/chart/theme.ts';
import { sayOdds, twentieths } from '../answer/oddsInWords.ts';
import type { Answer, QuestionInput } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { ChartFigure } from '../charts/ChartFigure.tsx';
import type { Column } from '../charts/csv.ts';
import { nearestOnRuler } from '../charts/nearest.ts';
import { SvgButton } from '../charts/SvgButton.tsx';
import { useWidth } from '../charts/useWidth.ts';
import { isoOf } from '../question/calendar.ts';
import type { DateWords } from '../units/dates.ts';
import { type NamedRow, ofRows, productName } from './compareAddress.ts';
import { useSeasons } from './useSeasons.ts';

interface SeasonOverlayProps {
  readonly question: QuestionInput;
  readonly crop: string;
  readonly oddsLimit: number;
  readonly picked: readonly NamedRow[];
  readonly stem: string;
  readonly source: string;
  readonly dates: DateWords;
  /** Whether the table is up to date, so that its question need not wait for these. */
  readonly ready: boolean;
}

const LETTERS = ['A', 'B', 'C'];
const WEEK = 7;

type Overlaid = OverlaidSeason & { readonly residual: string };

/** Up to three residuals over the season, on one date ruler. */
export function SeasonOverlay(props: SeasonOverlayProps) {
  const { question, crop, oddsLimit, picked, stem, source, dates, ready } = props;
  const { element, width } = useWidth<HTMLElement>();
  const { plantOn } = question;
  const questions = useMemo(
    () => ofRows(question, picked),
    [question, picked.map(({ residual }) => residual).join()],
  );
  const { answers, pending, failed } = useSeasons(questions, ready);
  const seasons = useMemo(() => overlaid(answers), [answers]);
  const narrow = width < 560;
  const ruler: Ruler = useMemo(() => {
    const [leftPx, rightPx] = [36, narrow ? 14 : 20];
    return {
      ...overlayEnds(seasons, plantOn),
      widthPx: Math.max(width, 280) - leftPx - rightPx,
      leftPx,
      rightPx,
      dateStyle: dates.style,
    };
  }, [seasons, plantOn, width, narrow, dates]);
  const caption = overlayFinding(seasons, plantOn, dates);
  const specWith = (tokens: ChartTokens, more: { title?: string; source?: string } = {}) =>
    overlaySeasons(seasons, {
      tokens,
      description: caption,
      ruler,
      plantOn,
      oddsLimit,
      heightPx: narrow ? 200 : 240,
      ...more,
    });
  const spec = useMemo(() => specWith(PAGE_TOKENS), [seasons, caption, ruler, plantOn, oddsLimit, narrow]);
  if (picked.length === 0) {
    return (
      <p class="note" data-testid="overlay-empty">
        Tick up to three residuals in the table to lay their seasons over each other.
      </p>
    );
  }
  return (
    <section
      class="season-overlay"
      ref={element}
      aria-label="Seasons laid over each other"
      data-pending={pending ? '' : undefined}
    >
      {failed && <p class="note">Not every season could be had; those that came are drawn.</p>}
      {width > 0 && seasons.length > 0 && (
        <ChartFigure
          testId="overlay"
          caption={caption}
          legend={
            <>
              {seasons.map(({ letter, residual }, index) => (
                <span key={residual} class="key key-line">
                  <svg viewBox="0 0 34 8" width="34" height="8" aria-hidden="true">
                    <path d="M1 4h32" stroke-dasharray={OVERLAY_DASHES[index].join(' ')} />
                  </svg>
                  <b>{letter}</b>&nbsp;{residual}
                </span>
              ))}
              <span>bold from the label date on; ring: clear date</span>
            </>
          }
          columns={columnsOf(seasons)}
          rows={weeksOf(ruler)}
          rowAt={({ x }) => nearestOnRuler(ruler, weeksOf(ruler), msOf, x)}
          fileName={`${stem}-seasons.csv`}
          tools={
            <SvgButton
              name={`${stem}-seasons.svg`}
              about={caption}
              spec={() =>
                specWith(LIGHT_TOKENS, {
                  title: `${seasons.map(({ letter, residual }) => `${letter} ${residual}`).join(', ')} before ${crop}`,
                  source,
                })
              }
            />
          }
        >
          <Chart spec={spec} />
        </ChartFigure>
      )}
    </section>
  );
}

function overlaid(answers: readonly Answer[]): Overlaid[] {
  return answers
    .flatMap(({ season, labelDate, clearDate, inputs }) =>
      season === undefined || season === null
        ? []
        : [
            {
              residual: productName(inputs.residual.name, inputs.labelEntry?.entry ?? null),
              startDate: season.startDate,
              odds: season.odds,
              labelDate,
              clearDate,
            },
          ],
    )
    .map((one, index) => ({ ...one, letter: LETTERS[index] }));
}

const onDate = ({ odds, startDate }: OverlaidSeason, date: string) => curveAt(odds, startDate, date);

/** Who clears first, and how the odds stand on the planting date. */
function overlayFinding(seasons: readonly Overlaid[], plantOn: string, dates: DateWords): string {
  const parts = seasons.map((season) => {
    const odds = onDate(season, plantOn);
    const clear =
      season.clearDate === null
        ? 'no clear date in the search'
        : `clear ${dates.near(season.clearDate, plantOn)}`;
    return `${season.residual} ${odds === null ? '' : `${sayOdds(odds)}, `}${clear}`;
  });
  return `On ${dates.monthDay(plantOn)}: ${parts.join('; ')}.`;
}

/** The first day of the ruler and every seventh after it. */
function weeksOf({ fromMs, toMs }: Ruler): string[] {
  const first = Math.round(fromMs / MS_PER_DAY);
  const count = Math.floor((toMs - fromMs) / MS_PER_DAY / WEEK);
  return Array.from({ length: count }, (_, week) => isoOf(first + week * WEEK));
}

const columnsOf = (seasons: readonly Overlaid[]): Column<string>[] => [
  { head: 'Date', cell: (date) => date, dates: 'day' },
  ...seasons.map((season) => ({
    head: `${season.residual}, odds in 20`,
    number: true,
    cell: (date: string) => {
      const odds = msOf(date) < msOf(season.startDate) ? null : onDate(season, date);
      return odds === null ? null : twentieths(odds);
    },
  })),
];
