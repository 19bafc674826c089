import { useMemo } from 'preact/hooks';
import { dotRows, quantileDots } from '../../../src/chart/quantileDots.ts';
import { rulerEnds } from '../../../src/chart/ruler.ts';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import type { Answer } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { dotsFinding } from '../charts/findings.ts';
import { useWidth } from '../charts/useWidth.ts';

/** Widest drawing: the width of the printed page. [px] */
const WIDEST_PX = 680;
const SIDE_PX = 18;

/** The twenty dots with their months, as the picture of the sheet. */
export function HandoutPicture({ answer }: { answer: Answer & { season: NonNullable<Answer['season']> } }) {
  const { element, width } = useWidth<HTMLElement>();
  const { season, labelDate, clearDate, oddsAtPlanting, inputs } = answer;
  const { plantOn } = inputs.question;
  const caption = dotsFinding(season, plantOn, inputs.crop);
  const spec = useMemo(
    () =>
      quantileDots(dotRows(season), {
        tokens: PAGE_TOKENS,
        description: caption,
        ruler: {
          ...rulerEnds(answer, season.startDate, plantOn),
          widthPx: Math.min(Math.max(width, 270), WIDEST_PX) - 2 * SIDE_PX,
          leftPx: SIDE_PX,
          rightPx: SIDE_PX,
        },
        marks: { plantOn, labelDate, clearDate },
        oddsAtPlanting: oddsAtPlanting ?? 0,
        dotPx: 15,
        monthsNamed: true,
      }),
    [answer, season, caption, width, plantOn, labelDate, clearDate, oddsAtPlanting],
  );
  return (
    <figure class="handout-picture" ref={element}>
      <figcaption>{caption}</figcaption>
      {width > 0 && <Chart spec={spec} />}
      <p>
        Each dot is one of twenty seasons and soils, on the day it turns safe. Line: planting. L: label date.
        {clearDate !== null && ' C: odds down to the limit.'}
      </p>
    </figure>
  );
}
