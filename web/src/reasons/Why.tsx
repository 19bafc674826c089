import { useMemo } from 'preact/hooks';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import { whyRowAt, whyRows, whyWaterfall } from '../../../src/chart/whyWaterfall.ts';
import { OddsChip } from '../answer/OddsChip.tsx';
import { keepTogether } from '../answer/oddsInWords.ts';
import { TableRoom } from '../answer/TableRoom.tsx';
import type { Answer } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { ChartFigure } from '../charts/ChartFigure.tsx';
import { fileStem } from '../charts/fileStem.ts';
import { useWidth } from '../charts/useWidth.ts';
import { placeWords, whyFinding } from './whyFinding.ts';

/** Reasons behind the odds: factors as a waterfall, or parts of the dose as a table, and always in words. */
export function Why({ answer }: { answer: Answer }) {
  const { why } = answer;
  if (why === null) return null;
  return (
    <section class="reasons" aria-labelledby="why-title" data-testid="why">
      <h2 id="why-title" class="section-title">
        Why
      </h2>
      <div class="why-words">
        {why.words.map((words) => (
          <p key={words}>{keepTogether(words)}</p>
        ))}
      </div>
      {why.whole !== null ? <Waterfall answer={answer} why={why} /> : <Parts why={why} />}
    </section>
  );
}

function Waterfall({ answer, why }: { answer: Answer; why: NonNullable<Answer['why']> }) {
  const { element, width } = useWidth<HTMLDivElement>();
  const rows = useMemo(() => whyRows(why), [why]);
  const caption = whyFinding(why);
  const spec = useMemo(
    () =>
      whyWaterfall(rows, {
        tokens: PAGE_TOKENS,
        description: caption,
        widthPx: Math.min(Math.max(width, 270), 680),
      }),
    [rows, caption, width],
  );
  return (
    <div ref={element}>
      {width > 0 && (
        <ChartFigure
          testId="why-chart"
          caption={caption}
          legend={
            <>
              <span class="key key-more">asks for more breakdown</span>
              <span class="key key-less">for less</span>
            </>
          }
          columns={[
            { head: 'Reason', cell: ({ name }) => name },
            { head: 'Times', cell: ({ factor }) => Number(factor.toPrecision(4)), number: true },
            { head: 'So far, times', cell: ({ to }) => Number(to.toPrecision(4)), number: true },
          ]}
          rows={rows}
          rowAt={({ y }) => whyRowAt(rows, y)}
          fileName={`${fileStem(answer)}-why.csv`}
        >
          <Chart spec={spec} />
        </ChartFigure>
      )}
    </div>
  );
}

function Parts({ why }: { why: NonNullable<Answer['why']> }) {
  if (why.parts.length === 0) return null;
  return (
    <TableRoom label="parts of the dose">
      <table class="wide" data-testid="why-parts">
        <caption>
          <span class="caption-words">{whyFinding(why)}</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Part of the dose</th>
            <th scope="col" class="number">
              Odds with it alone, in 20
            </th>
            <th scope="col" class="number">
              Odds without it, in 20
            </th>
          </tr>
        </thead>
        <tbody>
          {why.parts.map(({ application, where, oddsWith, oddsWithout }) => (
            <tr key={`${application}-${where}`}>
              <th scope="row">
                Application {application}, on {placeWords(where)}
              </th>
              <td class="number">
                <OddsChip odds={oddsWith} />
              </td>
              <td class="number">
                <OddsChip odds={oddsWithout} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}
