import type { Season } from '../schema/answer.ts';
import { MS_PER_DAY, monthStartMs, msOf } from './dateMs.ts';
import { type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import { markLayers, markRows, onRuler, type Ruler, type RulerMarks, rulerLayer } from './ruler.ts';
import { valueAxis } from './valueAxis.ts';

/** Rain units a chart can be drawn in. */
export type RainUnit = 'in' | 'mm';

/** What the rain chart takes beside its rows. */
export interface RainOptions extends ChartOptions {
  readonly ruler: Ruler;
  readonly marks: RulerMarks;
  readonly rainUnit: RainUnit;
  /** Converts millimetres to the unit. */
  readonly rainIn: (mm: number) => number;
  /** First and last day of the season, whose months may be cut short. */
  readonly season: { readonly from: string; readonly to: string };
  readonly heightPx?: number;
}

/** Part of a month's width left free on either side of its bar. */
const GAP = 0.1;

/** Rain by month: what fell as a solid bar, what is normal for the same days as an outline. */
export function rainMonths(rows: Season['rain']['months'], options: RainOptions): ChartSpec {
  const { ruler, marks, tokens, rainUnit, rainIn, season, heightPx = 110 } = options;
  const bars = rows.map(({ month, observedMm, normalMm }) => {
    const monthMs = msOf(`${month}-01`);
    const startMs = Math.max(monthMs, msOf(season.from));
    const endMs = Math.min(monthStartMs(monthMs, 1), msOf(season.to) + MS_PER_DAY, ruler.toMs);
    const gapMs = (endMs - startMs) * GAP;
    return {
      month,
      startMs: startMs + gapMs,
      endMs: endMs - gapMs,
      observed: observedMm === null ? null : rainIn(observedMm),
      normal: rainIn(normalMm),
    };
  });
  const most = Math.max(rainIn(10), ...bars.flatMap(({ observed, normal }) => [observed ?? 0, normal]));
  const x = onRuler('startMs');
  const x2 = { field: 'endMs' };
  const y = {
    field: 'normal',
    type: 'quantitative' as const,
    scale: { domain: [0, most * 1.08], nice: false },
    axis: {
      tickCount: 3,
      ...valueAxis(`Rain, ${rainUnit}`, ruler.leftPx),
    },
  };
  return framed(
    {
      widthPx: ruler.widthPx,
      heightPx,
      padding: { left: ruler.leftPx, right: ruler.rightPx, top: 34, bottom: 42 },
    },
    options,
    {
      normal: bars,
      observed: bars.filter(({ observed }) => observed !== null),
      ...markRows(ruler, marks),
    },
    [
      rulerLayer(ruler, tokens, true),
      {
        data: rowsOf('observed'),
        mark: { type: 'rect', fill: tokens.softInk, aria: false },
        encoding: {
          x,
          x2,
          y: { ...y, field: 'observed' },
          y2: { datum: 0 },
        },
      },
      {
        data: rowsOf('normal'),
        mark: { type: 'rect', filled: false, stroke: tokens.edge, strokeWidth: 1.25, aria: false },
        encoding: { x, x2, y, y2: { datum: 0 } },
      },
      ...markLayers(tokens),
    ],
  );
}
