import { useMemo, useState } from 'preact/hooks';
import { controlAgainstOdds } from '../../../src/chart/controlAgainstOdds.ts';
import { type ChartTokens, LIGHT_TOKENS, PAGE_TOKENS } from '../../../src/chart/theme.ts';
import { sayOdds } from '../answer/oddsInWords.ts';
import { ThirdMark } from '../answer/ThirdMark.tsx';
import type { Comparison, ResidualRow } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { SvgButton } from '../charts/SvgButton.tsx';
import { useWidth } from '../charts/useWidth.ts';
import { compareStem } from './compareFiles.ts';
import { sayWeekRange, sayWeeks, tradeFinding } from './compareWords.ts';
import { shownRows } from './picks.ts';

interface ControlChartProps {
  readonly answer: Comparison;
  readonly picks: readonly string[];
  /** Whether those that the label rules out are drawn too. */
  readonly all: boolean;
}

/** Odds against weeks of control, one mark for each residual; a mark that is pressed gives its numbers. */
export function ControlChart({ answer, picks, all }: ControlChartProps) {
  const { element, width } = useWidth<HTMLElement>();
  const [pressed, setPressed] = useState<string | null>(null);
  const [over, setOver] = useState<string | null>(null);
  const { residuals, question } = answer;
  const judged = useMemo(() => residuals.filter((row) => row.oddsAtPlanting !== null), [residuals]);
  const drawn = useMemo(() => shownRows(judged, all), [judged, all]);
  const caption = tradeFinding(answer);
  const rung = pressed === null ? picks : [...picks, pressed];
  const specWith = (tokens: ChartTokens, more: { title?: string; source?: string } = {}) =>
    controlAgainstOdds(drawn, {
      tokens,
      description: `${caption} ${drawn.map(inWords).join(' ')}`,
      widthPx: Math.max(width, 288),
      heightPx: width < 560 ? 290 : 330,
      oddsLimit: question.oddsLimit,
      picked: rung,
      ...more,
    });
  const spec = useMemo(() => specWith(PAGE_TOKENS), [drawn, caption, width, question.oddsLimit, rung.join()]);
  const one = drawn.find(({ residual }) => residual === (over ?? pressed));
  if (judged.length === 0) return null;
  return (
    <figure class="chart" data-testid="control-chart" ref={element}>
      <figcaption>{caption}</figcaption>
      <div class="legend">
        <span class="key key-mark">
          <Sign kind="published" /> interval published
        </span>
        <span class="key key-mark">
          <Sign kind="memory" /> from memory
        </span>
        <span class="key key-mark">
          <Sign kind="struck" /> label rules it out
        </span>
        <span class="key">
          <ThirdMark third="dry" /> dry years
        </span>
        <span class="key">
          <ThirdMark third="wet" /> wet years
        </span>
      </div>
      {width > 0 && (
        <Chart
          spec={spec}
          onPoint={(row) => setOver((row as { name?: string } | null)?.name ?? null)}
          onPick={(row) => {
            const { name } = row as { name?: string };
            if (name !== undefined) setPressed(name === pressed ? null : name);
          }}
        />
      )}
      <p class="pressed" data-testid="pressed">
        {one ? inWords(one) : 'Point at a mark or press it for its numbers; the table below has them all.'}
      </p>
      <div class="chart-tools">
        <SvgButton
          name={`${compareStem(answer)}.svg`}
          about={caption}
          spec={() => specWith(LIGHT_TOKENS, { title: caption, source: answer.cautions[0] })}
        />
      </div>
    </figure>
  );
}

/** A mark’s numbers. */
function inWords({
  residual,
  oddsAtPlanting,
  oddsRange,
  thirdOdds,
  weeksOfControl,
  labelAllows,
}: ResidualRow): string {
  const ends = oddsRange && [Math.round(oddsRange.low * 20), Math.round(oddsRange.high * 20)];
  const range = ends === null || ends[0] === ends[1] ? '' : ` (between ${ends[0]} and ${ends[1]})`;
  const odds = `${sayOdds(oddsAtPlanting ?? 0)}${range}`;
  const dry = thirdOdds === null ? '' : `, in dry years ${sayOdds(thirdOdds.dry)}`;
  const weeks =
    weeksOfControl === null
      ? 'weeks of control not known'
      : `${sayWeeks(weeksOfControl.middle)} weeks of control (${sayWeekRange(weeksOfControl)})`;
  return `${residual}: ${odds}${dry}; ${weeks}${labelAllows ? '' : '; the label rules the date out'}.`;
}

/** The signs of the chart, as its key shows them. */
function Sign({ kind }: { kind: 'published' | 'memory' | 'struck' }) {
  return (
    <svg class="sign" viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
      {kind === 'struck' ? <path d="M3 3l8 8M3 11l8-8" /> : <circle cx="7" cy="7" r="5" data-kind={kind} />}
    </svg>
  );
}
