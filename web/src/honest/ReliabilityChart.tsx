import { useMemo } from 'preact/hooks';
import { reliability } from '../../../src/chart/reliability.ts';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import { twentieths } from '../answer/oddsInWords.ts';
import type { Hindcast } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { ChartFigure } from '../charts/ChartFigure.tsx';
import { useWidth } from '../charts/useWidth.ts';
import { bandName, lookBackStem, reliabilityFinding } from './lookBackWords.ts';

/** Widest that the drawing grows: both axes are alike. [px] */
const WIDEST_PX = 520;

/** Odds given against what came, band by band. */
export function ReliabilityChart({ hindcast }: { hindcast: Hindcast }) {
  const { element, width } = useWidth<HTMLDivElement>();
  const { bins, baseRate } = hindcast.overall;
  const caption = reliabilityFinding(hindcast.overall);
  const spec = useMemo(
    () =>
      reliability(bins, {
        tokens: PAGE_TOKENS,
        description: caption,
        widthPx: Math.min(Math.max(width, 270), WIDEST_PX),
        baseRate,
      }),
    [bins, caption, width, baseRate],
  );
  return (
    <div ref={element}>
      {width > 0 && (
        <ChartFigure
          testId="reliability"
          caption={caption}
          legend={
            <>
              <span class="key key-honest">odds and outcomes alike</span>
              <span class="key key-limit">always the base rate</span>
              <span class="key key-band">a band of odds, with what chance leaves open</span>
            </>
          }
          columns={[
            { head: 'Odds given, in 20', cell: bandName },
            { head: 'Times given', cell: ({ forecasts }) => forecasts, number: true },
            { head: 'Different years', cell: ({ years }) => years, number: true },
            { head: 'Their mean, in 20', cell: ({ meanOdds }) => twentieths(meanOdds), number: true },
            { head: 'Harm came, in 20', cell: ({ observed }) => twentieths(observed), number: true },
            { head: '95 % of chance from, in 20', cell: ({ low }) => twentieths(low), number: true },
            { head: 'to, in 20', cell: ({ high }) => twentieths(high), number: true },
          ]}
          rows={bins}
          fileName={`${lookBackStem(hindcast)}-bands.csv`}
        >
          <Chart spec={spec} />
        </ChartFigure>
      )}
    </div>
  );
}
