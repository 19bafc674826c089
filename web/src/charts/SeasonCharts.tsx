import { useMemo, useRef } from 'preact/hooks';
import { MS_PER_DAY, msOf } from '../../../src/chart/dateMs.ts';
import { dotsFinding, rainFinding, seasonFinding } from '../../../src/chart/findings.ts';
import { RAIN_KEYS, SEASON_KEYS } from '../../../src/chart/legends.ts';
import { curveAt, oddsSeason } from '../../../src/chart/oddsSeason.ts';
import { dotCounts, dotRows, quantileDots } from '../../../src/chart/quantileDots.ts';
import { rainMonths } from '../../../src/chart/rainMonths.ts';
import { type Ruler, rulerEnds } from '../../../src/chart/ruler.ts';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import { OddsLine } from '../answer/OddsLine.tsx';
import { sayOdds, twentieths } from '../answer/oddsInWords.ts';
import type { Answer, QuestionInput } from '../api/contract.ts';
import { dayOf, isoOf } from '../question/calendar.ts';
import { rainNumber, rainText, rainUnit, rainValue, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';
import { Chart } from './Chart.tsx';
import { ChartFigure } from './ChartFigure.tsx';
import { fileStem } from './fileStem.ts';
import { MarkerRow } from './MarkerRow.tsx';
import { nearestOnRuler } from './nearest.ts';
import { RulerStrip } from './RulerStrip.tsx';
import { pickedYear, seasonRows } from './seasonRows.ts';
import { useChartPointer } from './useChartPointer.ts';
import { type Move, useMarker } from './useMarker.ts';
import { useWidth } from './useWidth.ts';

interface SeasonChartsProps {
  readonly answer: Answer & { season: NonNullable<Answer['season']> };
  readonly question: QuestionInput;
  readonly units: Units;
  readonly picked: number | null;
  readonly move: Move;
}

/** The three charts that hang on one date ruler, with the marker that crosses them all. */
export function SeasonCharts({ answer, question, units, picked, move }: SeasonChartsProps) {
  const dates = useDates();
  const { season, labelDate, clearDate } = answer;
  const { plantOn } = question;
  const { element, width } = useWidth<HTMLDivElement>();
  const moves = useMarker(plantOn, move);
  const appliedOn = season.startDate;

  const held = useRef<{ fromMs: number; toMs: number } | null>(null);
  const ends = moves.dragging() && held.current ? held.current : rulerEnds(answer, appliedOn, plantOn);
  held.current = ends;
  const narrow = width < 560;
  const leftPx = 36;
  const rightPx = narrow ? 14 : 20;
  const ruler: Ruler = useMemo(
    () => ({
      fromMs: ends.fromMs,
      toMs: ends.toMs,
      widthPx: Math.max(width, 280) - leftPx - rightPx,
      leftPx,
      rightPx,
      dateStyle: dates.style,
    }),
    [ends.fromMs, ends.toMs, width, rightPx, dates],
  );
  const earliest = isoOf(dayOf(appliedOn) + 1);
  const pointer = useChartPointer(ruler, earliest, moves);

  const here = curveAt(season.odds, season.startDate, plantOn) ?? answer.oddsAtPlanting ?? 0;
  const oddsText = sayOdds(here);
  const marks = useMemo(() => ({ plantOn, labelDate, clearDate }), [plantOn, labelDate, clearDate]);
  const oddsLimit = answer.inputs.question.oddsLimit;
  const crop = answer.inputs.crop;

  const dots = useMemo(() => dotRows(season), [season]);
  const dotsCaption = dotsFinding(season, plantOn, crop, dates);
  const dotsSpec = useMemo(
    () =>
      quantileDots(dots, {
        tokens: PAGE_TOKENS,
        description: dotsCaption,
        ruler,
        marks,
        oddsAtPlanting: here,
      }),
    [dots, dotsCaption, ruler, marks, here],
  );
  const seasonCaption = seasonFinding(season, answer, dates);
  const seasonSpec = useMemo(
    () =>
      oddsSeason(season, {
        tokens: PAGE_TOKENS,
        description: seasonCaption,
        ruler,
        marks,
        oddsLimit,
        picked,
        heightPx: narrow ? 170 : 230,
      }),
    [season, seasonCaption, ruler, marks, oddsLimit, picked, narrow],
  );
  const rainCaption = rainFinding(season, answer.weather.observedThrough, (mm) => rainText(mm, units), dates);
  const rainSpec = useMemo(
    () =>
      rainMonths(season.rain.months, {
        tokens: PAGE_TOKENS,
        description: rainCaption,
        ruler,
        marks,
        rainUnit: rainUnit(units),
        rainIn: (mm) => rainValue(mm, units),
        season: { from: appliedOn, to: lastRainDay(answer) },
      }),
    [season, rainCaption, ruler, marks, units, appliedOn, answer],
  );
  const stem = fileStem(answer);
  const weeks = useMemo(
    () => seasonRows(season, Math.round((ruler.toMs - msOf(season.startDate)) / MS_PER_DAY)),
    [season, ruler.toMs],
  );

  return (
    <div class="season" ref={element}>
      {width > 0 && (
        <>
          <ChartFigure
            testId="dots"
            caption={dotsCaption}
            columns={[
              { head: 'Dot', cell: ({ dot }) => dot, number: true },
              {
                head: 'Odds stay under, in 20',
                cell: ({ oddsUnder }) => (oddsUnder * 20).toFixed(1),
                number: true,
              },
              { head: 'From', cell: ({ date }) => date ?? 'past the search', dates: 'day' },
              { head: 'After planting', cell: (row) => (dotCounts(row, plantOn) ? 'yes' : 'no') },
            ]}
            rows={dots}
            rowAt={({ x }) =>
              nearestOnRuler(ruler, dots, ({ date }) => (date === null ? ruler.toMs : msOf(date)), x)
            }
            fileName={`${stem}-dots.csv`}
          >
            <div class="plot" {...pointer}>
              <Chart spec={dotsSpec} />
            </div>
            <RulerStrip
              ruler={ruler}
              plantOn={plantOn}
              earliest={earliest}
              oddsText={oddsText}
              moves={moves}
            />
            <MarkerRow question={question} odds={here} moves={moves} />
            <OddsLine answer={answer} />
            <p class="legend">
              <b>L</b> <Term name="label date" /> {dates.full(labelDate)} <span class="gap" />
              <b>C</b> <Term name="clear date" />{' '}
              {clearDate ? dates.full(clearDate) : 'not within the search'}
            </p>
          </ChartFigure>
          <ChartFigure
            testId="year-lines"
            caption={seasonCaption}
            legend={
              <>
                {SEASON_KEYS.map(({ key, words }) => (
                  <span key={key} class={`key key-${key}`}>
                    {words}
                  </span>
                ))}
                {picked !== null && <span class="key key-picked">{picked}</span>}
              </>
            }
            columns={[
              { head: 'Date', cell: ({ date }) => date, dates: 'day' },
              { head: 'Odds, in 20', cell: ({ odds }) => twentieths(odds), number: true },
              {
                head: 'Dry years, in 20',
                cell: ({ dry }) => (dry === null ? null : twentieths(dry)),
                number: true,
              },
              {
                head: 'Middle years, in 20',
                cell: ({ middle }) => (middle === null ? null : twentieths(middle)),
                number: true,
              },
              {
                head: 'Wet years, in 20',
                cell: ({ wet }) => (wet === null ? null : twentieths(wet)),
                number: true,
              },
              ...pickedYear(season, picked),
            ]}
            rows={weeks}
            rowAt={({ x }) => nearestOnRuler(ruler, weeks, ({ date }) => msOf(date), x)}
            fileName={`${stem}-season.csv`}
          >
            <div class="plot" {...pointer}>
              <Chart spec={seasonSpec} />
            </div>
          </ChartFigure>
          <ChartFigure
            testId="rain"
            caption={rainCaption}
            legend={RAIN_KEYS.map(({ key, words }) => (
              <span key={key} class={`key key-${key}`}>
                {words}
              </span>
            ))}
            columns={[
              { head: 'Month', cell: ({ month }) => month, dates: 'month' },
              {
                head: `Rain, ${rainUnit(units)}`,
                cell: ({ observedMm }) => (observedMm === null ? null : rainNumber(observedMm, units)),
                number: true,
              },
              {
                head: `Normal, ${rainUnit(units)}`,
                cell: ({ normalMm }) => rainNumber(normalMm, units),
                number: true,
              },
            ]}
            rows={season.rain.months}
            rowAt={({ x }) =>
              nearestOnRuler(ruler, season.rain.months, ({ month }) => msOf(`${month}-15`), x)
            }
            fileName={`${stem}-rain.csv`}
          >
            <div class="plot" {...pointer}>
              <Chart spec={rainSpec} />
            </div>
          </ChartFigure>
        </>
      )}
    </div>
  );
}

/** Last day that the months of rain reach. */
function lastRainDay({ weather: { observedThrough }, inputs: { question } }: Answer): string {
  return observedThrough !== null && observedThrough > question.plantOn ? observedThrough : question.plantOn;
}
