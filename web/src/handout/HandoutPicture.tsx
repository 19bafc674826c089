import { useMemo } from 'preact/hooks';
import { dotsFinding } from '../../../src/chart/findings.ts';
import { dotsLegend } from '../../../src/chart/legends.ts';
import { dotRows, quantileDots } from '../../../src/chart/quantileDots.ts';
import { rulerEnds } from '../../../src/chart/ruler.ts';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import type { Answer } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { useWidth } from '../charts/useWidth.ts';
import { useDates } from '../units/useDates.ts';
import { PAGE_WIDTH_PX } from './useOnePage.ts';

type Drawn = Answer & { season: NonNullable<Answer['season']> };

const SIDE_PX = 18;

/** The twenty dots with their months, as the picture of the sheet; a narrow screen has a drawing of its own. */
export function HandoutPicture({ answer }: { answer: Drawn }) {
  const dates = useDates();
  const { element, width } = useWidth<HTMLElement>();
  const { season, clearDate, inputs } = answer;
  const caption = dotsFinding(season, inputs.question.plantOn, inputs.crop, dates);
  return (
    <figure class="handout-picture" ref={element}>
      <figcaption>{caption}</figcaption>
      {width >= PAGE_WIDTH_PX ? (
        <Dots answer={answer} caption={caption} widthPx={PAGE_WIDTH_PX} />
      ) : (
        <>
          <div class="on-screen">
            {width > 0 && <Dots answer={answer} caption={caption} widthPx={Math.max(width, 270)} />}
          </div>
          <div class="on-paper">
            <Dots answer={answer} caption={caption} widthPx={PAGE_WIDTH_PX} />
          </div>
        </>
      )}
      <p>{dotsLegend(clearDate)}</p>
    </figure>
  );
}

function Dots({ answer, caption, widthPx }: { answer: Drawn; caption: string; widthPx: number }) {
  const { style: dateStyle } = useDates();
  const { season, labelDate, clearDate, oddsAtPlanting, inputs } = answer;
  const { plantOn } = inputs.question;
  const spec = useMemo(
    () =>
      quantileDots(dotRows(season), {
        tokens: PAGE_TOKENS,
        description: caption,
        ruler: {
          ...rulerEnds(answer, season.startDate, plantOn),
          widthPx: widthPx - 2 * SIDE_PX,
          leftPx: SIDE_PX,
          rightPx: SIDE_PX,
          dateStyle,
        },
        marks: { plantOn, labelDate, clearDate },
        oddsAtPlanting: oddsAtPlanting ?? 0,
        dotPx: 15,
        monthsNamed: true,
      }),
    [answer, season, caption, widthPx, plantOn, labelDate, clearDate, oddsAtPlanting, dateStyle],
  );
  return <Chart spec={spec} />;
}
