import type { Season } from '../schema/answer.ts';
import { msOf } from './dateMs.ts';
import { type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import { markLayers, markRows, onRuler, type Ruler, type RulerMarks, rulerLayer } from './ruler.ts';
import { oddsColour } from './theme.ts';
import { valueAxis } from './valueAxis.ts';

/** What the story takes beside its steps. */
export interface StoryOptions extends ChartOptions {
  readonly ruler: Ruler;
  readonly marks: RulerMarks;
  /** Day of the application, on which the plan stands. */
  readonly appliedOn: string;
  /** Carryover odds that the user accepts. [0-1] */
  readonly oddsLimit: number;
  readonly heightPx?: number;
}

/** Odds are drawn out of this many, as the sentence says them. */
const OUT_OF = 20;
/** The axis reaches at least this far, so that low odds look low. */
const LEAST_TOP = 10;

/**
 * The story of the season on the ruler: solid dots, the odds for the planting date as they were known week by week;
 * open dots, the odds for planting that many weeks later.
 */
export function oddsStory({ weeks, delay }: Season['story'], options: StoryOptions): ChartSpec {
  const { ruler, marks, tokens, appliedOn, oddsLimit, heightPx = 150 } = options;
  const point = (date: string, odds: number) => ({
    dateMs: msOf(date),
    in20: odds * OUT_OF,
    fill: oddsColour(tokens, odds),
  });
  const inside = ({ dateMs }: { dateMs: number }) => dateMs <= ruler.toMs;
  const known = weeks.map(({ observedThrough, odds }) => point(observedThrough ?? appliedOn, odds));
  const later = delay.map(({ plantOn, odds }) => point(plantOn, odds)).filter(inside);
  const highest = Math.max(0, ...[...known, ...later].map(({ in20 }) => in20));
  const top = Math.min(OUT_OF, Math.max(LEAST_TOP, 5 * Math.ceil(highest / 5)));
  const y = {
    field: 'in20',
    type: 'quantitative' as const,
    scale: { domain: [0, top], nice: false },
    axis: {
      values: [0, 5, 10, 15, 20].filter((value) => value <= top),
      ...valueAxis('Odds, in 20', ruler.leftPx),
    },
  };
  const plainY = { field: 'in20', type: 'quantitative' as const };
  const line = (name: string, mark: object) => ({
    data: rowsOf(name),
    mark: { type: 'line' as const, color: tokens.softInk, strokeWidth: 1.5, aria: false, ...mark },
    encoding: { x: onRuler(), y: plainY },
  });
  return framed(
    {
      widthPx: ruler.widthPx,
      heightPx,
      padding: { left: ruler.leftPx, right: ruler.rightPx, top: 34, bottom: 42 },
    },
    options,
    { known, later, limit: [{ in20: oddsLimit * OUT_OF }], ...markRows(ruler, marks) },
    [
      rulerLayer(ruler, tokens, true),
      {
        data: rowsOf('limit'),
        mark: { type: 'rule', color: tokens.softInk, strokeDash: [2, 2], aria: false },
        encoding: { y },
      },
      ...markLayers(tokens),
      line('known', {}),
      line('later', { strokeDash: [3, 3] }),
      {
        data: rowsOf('known'),
        mark: { type: 'point', filled: true, size: 70, opacity: 1, strokeWidth: 1.25, aria: false },
        encoding: {
          x: onRuler(),
          y: plainY,
          fill: { field: 'fill', type: 'nominal', scale: null },
          stroke: { value: tokens.ink },
        },
      },
      {
        data: rowsOf('later'),
        mark: { type: 'point', filled: true, fill: tokens.sheet, size: 60, opacity: 1, aria: false },
        encoding: { x: onRuler(), y: plainY, stroke: { value: tokens.edge }, strokeWidth: { value: 1.5 } },
      },
    ],
  );
}
