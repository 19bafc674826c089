import { type DateStyle, monthName } from '../dateWords.ts';
import type { RecentRain } from '../schema/completeness.ts';
import { type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import type { RainUnit } from './rainMonths.ts';
import { valueAxis } from './valueAxis.ts';

/** What the chart of the last twelve months takes beside its rows. */
export interface RecentOptions extends ChartOptions {
  readonly widthPx?: number;
  readonly heightPx?: number;
  /** How months are named; by names where absent. */
  readonly dateStyle?: DateStyle;
  readonly rainUnit: RainUnit;
  /** Converts millimetres to the unit. */
  readonly rainIn: (mm: number) => number;
}

/** Part of a month's width left free on either side of its bar. */
const GAP = 0.14;
/** Room that the scale takes left of the months. [px] */
const LEFT_PX = 44;
const RIGHT_PX = 4;
/** Below this width months are single letters and percents stand upright. [px] */
const NARROW_PX = 560;

/** The month at a place of the drawing; null beside the months. @param xPx from its left edge [px] */
export function recentMonthAt<Row>(rows: readonly Row[], xPx: number, widthPx: number): Row | null {
  const monthPx = (widthPx - LEFT_PX - RIGHT_PX) / rows.length;
  return rows[Math.floor((xPx - LEFT_PX) / monthPx)] ?? null;
}

/** Rain of the last twelve whole months: what fell as a solid bar, the normal as an outline, percent above both. */
export function recentMonths(rows: RecentRain['months'], options: RecentOptions): ChartSpec {
  const { tokens, rainUnit, rainIn, dateStyle = 'us', widthPx = 640, heightPx = 150 } = options;
  const bars = rows.map(({ month, rainMm, normalMm, percentOfNormal }, index) => ({
    month,
    start: index + GAP,
    middle: index + 0.5,
    end: index + 1 - GAP,
    rain: rainMm === null ? null : rainIn(rainMm),
    normal: normalMm === null ? null : rainIn(normalMm),
    top: Math.max(rainIn(rainMm ?? 0), rainIn(normalMm ?? 0)),
    label: percentOfNormal === null ? (rainMm === null ? 'gap' : '') : `${Math.round(percentOfNormal)} %`,
  }));
  const narrow = widthPx < NARROW_PX;
  const most = Math.max(rainIn(10), ...bars.map(({ top }) => top));
  const names = rows.map(({ month }, index) => {
    const number = Number(month.slice(5));
    const name = monthName(number, dateStyle);
    const short = narrow && dateStyle === 'us' ? name[0] : name;
    return index === 0 || number === 1 ? `${short}|${month.slice(0, 4)}` : short;
  });
  const x = {
    field: 'start',
    type: 'quantitative' as const,
    scale: { domain: [0, rows.length], nice: false },
    axis: {
      title: null,
      values: rows.map((_, index) => index + 0.5),
      labelExpr: `split(${JSON.stringify(names)}[floor(datum.value)], '|')`,
      labelFlush: false,
      labelOverlap: false,
      grid: false,
      ticks: false,
    },
  };
  const x2 = { field: 'end' };
  const y = (field: 'rain' | 'normal' | 'top') => ({
    field,
    type: 'quantitative' as const,
    scale: { domain: [0, most * (narrow ? 1.45 : 1.15)], nice: false },
    axis: {
      tickCount: 3,
      ...valueAxis(`Rain, ${rainUnit}`, LEFT_PX),
    },
  });
  return framed(
    {
      widthPx: widthPx - LEFT_PX - RIGHT_PX,
      heightPx,
      padding: { left: LEFT_PX, right: RIGHT_PX, top: 36, bottom: 44 },
    },
    options,
    {
      fell: bars.filter(({ rain }) => rain !== null),
      normal: bars.filter(({ normal }) => normal !== null),
      labels: bars.filter(({ label }) => label !== ''),
    },
    [
      {
        data: rowsOf('fell'),
        mark: { type: 'rect', fill: tokens.softInk, aria: false },
        encoding: { x, x2, y: y('rain'), y2: { datum: 0 } },
      },
      {
        data: rowsOf('normal'),
        mark: { type: 'rect', filled: false, stroke: tokens.edge, strokeWidth: 1.25, aria: false },
        encoding: { x, x2, y: y('normal'), y2: { datum: 0 } },
      },
      {
        data: rowsOf('labels'),
        mark: narrow
          ? {
              type: 'text',
              angle: 270,
              align: 'left',
              baseline: 'middle',
              dx: 5,
              fill: tokens.ink,
              aria: false,
            }
          : { type: 'text', baseline: 'bottom', dy: -4, fill: tokens.ink, aria: false },
        encoding: {
          x: { ...x, field: 'middle' },
          y: y('top'),
          text: { field: 'label', type: 'nominal' },
        },
      },
    ],
  );
}
