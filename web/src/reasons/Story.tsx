import { useMemo } from 'preact/hooks';
import { msOf } from '../../../src/chart/dateMs.ts';
import { oddsStory } from '../../../src/chart/oddsStory.ts';
import { rulerEnds } from '../../../src/chart/ruler.ts';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import { twentieths } from '../answer/oddsInWords.ts';
import type { Answer } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { ChartFigure } from '../charts/ChartFigure.tsx';
import { fileStem } from '../charts/fileStem.ts';
import { nearestOnRuler } from '../charts/nearest.ts';
import { useWidth } from '../charts/useWidth.ts';
import type { Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { Term } from '../words/Term.tsx';
import { delayFinding, PLANNED, storyFinding, storyRows, toDateWords } from './storyWords.ts';

const LEFT_PX = 36;
const RIGHT_PX = 16;

/** How the odds moved from week to week, and what each further week of waiting gains. */
export function Story({ answer, units }: { answer: Answer; units: Units }) {
  const dates = useDates();
  const { element, width } = useWidth<HTMLDivElement>();
  const { season, inputs, labelDate, clearDate } = answer;
  const { plantOn, oddsLimit } = inputs.question;
  const caption = season ? storyFinding(season.story, plantOn, dates) : '';
  const ruler = useMemo(
    () =>
      season && {
        ...rulerEnds(answer, season.startDate, plantOn),
        widthPx: Math.max(width, 280) - LEFT_PX - RIGHT_PX,
        leftPx: LEFT_PX,
        rightPx: RIGHT_PX,
        dateStyle: dates.style,
      },
    [answer, season, plantOn, width, dates],
  );
  const spec = useMemo(() => {
    if (!season || !ruler) return null;
    return oddsStory(season.story, {
      tokens: PAGE_TOKENS,
      description: caption,
      ruler,
      marks: { plantOn, labelDate, clearDate },
      appliedOn: season.startDate,
      oddsLimit,
    });
  }, [season, caption, ruler, plantOn, labelDate, clearDate, oddsLimit]);
  if (!season || season.story.weeks.length + season.story.delay.length === 0) return null;
  const { story } = season;
  const rows = storyRows(story, plantOn);
  const known = story.weeks.length > 0;
  return (
    <section class="reasons" aria-labelledby="story-title" data-testid="story">
      <h2 id="story-title" class="section-title">
        {known ? 'The season so far, and what waiting gains' : 'What waiting gains'}
      </h2>
      {known && (
        <p class="section-lead">
          {toDateWords(story, units).join(' ')} <Term name="breakdown day">What is a breakdown day?</Term>
        </p>
      )}
      <div ref={element}>
        {width > 0 && spec && ruler && (
          <ChartFigure
            testId="story-chart"
            caption={caption}
            legend={
              <>
                {known && (
                  <span class="key key-known">odds for {dates.monthDay(plantOn)}, as known that week</span>
                )}
                <span class="key key-later">odds for planting that week</span>
                <span class="key key-limit">your limit</span>
              </>
            }
            columns={[
              { head: 'What', cell: ({ about }) => about },
              { head: 'Observed up to', cell: ({ date }) => date ?? '', dates: 'day' },
              { head: 'Planting', cell: (row) => row.plantOn, dates: 'day' },
              { head: 'Odds, in 20', cell: ({ odds }) => twentieths(odds), number: true },
              {
                head: 'Change, in 20',
                cell: ({ change }) => (change === null ? null : (change * 20).toFixed(1)),
                number: true,
              },
            ]}
            rows={rows}
            rowAt={({ x }) =>
              nearestOnRuler(
                ruler,
                rows,
                (row) => msOf(row.about === PLANNED ? season.startDate : (row.date ?? row.plantOn)),
                x,
              )
            }
            fileName={`${fileStem(answer)}-story.csv`}
          >
            <Chart spec={spec} />
          </ChartFigure>
        )}
      </div>
      {known && <p class="section-note">{delayFinding(story.delay)}</p>}
    </section>
  );
}
