import type { Answer } from '../schema/answer.ts';
import { type ChartLayer, type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';

type Why = NonNullable<Answer['why']>;

/** Factors that multiply to the whole, in the order in which they are told. */
export const WHY_FACTORS = ['calendar', 'warmth', 'rain', 'dose', 'soil'] as const;
type FactorName = (typeof WHY_FACTORS)[number];

/** What each factor is about, in a word or two. */
export const WHY_NAMES: Readonly<Record<FactorName | 'whole', string>> = {
  calendar: 'Time until planting',
  warmth: 'Warmth',
  rain: 'Rain and soil moisture',
  dose: 'Dose',
  soil: 'Soil pH',
  whole: 'All together',
};

/** One step of the waterfall: a factor, and how far the product has come before and after it. */
export interface WhyRow {
  readonly key: FactorName | 'whole';
  readonly name: string;
  readonly factor: number;
  readonly from: number;
  readonly to: number;
}

/** Rows of the waterfall; empty where the reasons have no factors. */
export function whyRows(why: Why): WhyRow[] {
  const { whole } = why;
  if (whole === null) return [];
  const rows: WhyRow[] = [];
  let product = 1;
  for (const key of WHY_FACTORS) {
    const factor = why[key] ?? 1;
    rows.push({ key, name: WHY_NAMES[key], factor, from: product, to: product * factor });
    product *= factor;
  }
  return [...rows, { key: 'whole', name: WHY_NAMES.whole, factor: whole, from: 1, to: whole }];
}

/** What the waterfall takes beside its rows. */
export interface WhyOptions extends ChartOptions {
  readonly widthPx: number;
}

const ROW_PX = 46;
const BAR_TOP_PX = 20;
const BAR_PX = 15;
/** A factor this near to 1 is drawn as a tick. */
const PLAIN = 0.005;
const PADDING = { left: 10, right: 10, top: 6, bottom: 48 };
const MOST_TICKS = 6;

/** The row at a height of the drawing; null above and below the bars. @param yPx from its upper edge [px] */
export const whyRowAt = (rows: readonly WhyRow[], yPx: number): WhyRow | null =>
  rows[Math.floor((yPx - PADDING.top) / ROW_PX)] ?? null;

/** A factor as the page writes it. */
export const timesText = (factor: number): string =>
  `× ${factor >= 100 ? factor.toFixed(0) : factor >= 10 ? factor.toFixed(1) : factor.toFixed(2)}`;

/**
 * Reasons as a waterfall on a log axis: each bar starts where the one above it ends, so that the last is their
 * product. Solid asks for more breakdown, outlined for less.
 */
export function whyWaterfall(rows: readonly WhyRow[], options: WhyOptions): ChartSpec {
  const { tokens, widthPx } = options;
  const heightPx = rows.length * ROW_PX;
  const domain = domainOf(rows);
  const placed = rows.map((row, index) => ({
    ...row,
    text: timesText(row.factor),
    nameY: index * ROW_PX + BAR_TOP_PX - 5,
    topY: index * ROW_PX + BAR_TOP_PX,
    middleY: index * ROW_PX + BAR_TOP_PX + BAR_PX / 2,
    bottomY: index * ROW_PX + BAR_TOP_PX + BAR_PX,
    nextY: (index + 1) * ROW_PX + BAR_TOP_PX,
  }));
  const x = {
    field: 'from',
    type: 'quantitative' as const,
    scale: { type: 'log' as const, base: 2, domain, nice: false },
    axis: {
      values: ticksOf(domain),
      title: 'Times the breakdown of a typical year, by planting',
      titlePadding: 8,
      grid: false,
      tickSize: 4,
      labelExpr: 'datum.value',
    },
  };
  const onX = (field: string) => ({ field, type: 'quantitative' as const });
  const y = (field: string) => ({
    field,
    type: 'quantitative' as const,
    scale: { domain: [heightPx, 0], nice: false, zero: false },
    axis: null,
  });
  const bars = (name: string, mark: object): ChartLayer => ({
    data: rowsOf(name),
    mark: { type: 'rect', aria: false, ...mark },
    encoding: { x, x2: { field: 'to' }, y: y('topY'), y2: { field: 'bottomY' } },
  });
  const written = (channel: string, mark: object): ChartLayer => ({
    data: rowsOf('rows'),
    mark: { type: 'text', baseline: 'alphabetic', aria: false, ...mark },
    encoding: { y: y('nameY'), text: { field: channel } },
  });
  const steps = placed.filter(({ key }) => key !== 'whole');
  const moved = steps.filter(({ factor }) => Math.abs(factor - 1) >= PLAIN);
  return framed(
    { widthPx: widthPx - PADDING.left - PADDING.right, heightPx, padding: PADDING },
    options,
    {
      one: [{ from: 1 }],
      more: moved.filter(({ factor }) => factor > 1),
      less: moved.filter(({ factor }) => factor < 1),
      plain: steps.filter((row) => !moved.includes(row)),
      whole: placed.filter(({ key }) => key === 'whole'),
      links: steps.slice(0, -1),
      rows: placed,
    },
    [
      {
        data: rowsOf('one'),
        mark: { type: 'rule', color: tokens.ink, strokeWidth: 1.25, aria: false },
        encoding: { x },
      },
      {
        data: rowsOf('links'),
        mark: { type: 'rule', color: tokens.edge, strokeDash: [2, 2], aria: false },
        encoding: { x: onX('to'), y: y('bottomY'), y2: { field: 'nextY' } },
      },
      bars('more', { fill: tokens.softInk }),
      bars('less', { fill: tokens.sheet, stroke: tokens.edge, strokeWidth: 1.5 }),
      bars('whole', { fill: tokens.ink }),
      {
        data: rowsOf('plain'),
        mark: {
          type: 'tick',
          orient: 'vertical',
          color: tokens.softInk,
          size: BAR_PX,
          thickness: 2,
          aria: false,
        },
        encoding: { x: onX('to'), y: y('middleY') },
      },
      // The line of the 1 keeps clear of the words.
      written('name', { x: 0, align: 'left', color: tokens.paper, stroke: tokens.paper, strokeWidth: 5 }),
      written('name', { x: 0, align: 'left', color: tokens.ink }),
      written('text', { x: { expr: 'width' }, align: 'right', fontWeight: 600, color: tokens.ink }),
    ],
  );
}

/** Ends of the axis: all bars and the 1, and half of it to its double at least. */
function domainOf(rows: readonly WhyRow[]): [number, number] {
  const reached = rows.flatMap(({ from, to }) => [from, to]);
  return [Math.min(0.5, ...reached) / 1.06, Math.max(2, ...reached) * 1.06];
}

/** Powers of two inside the axis, thinned where there are many. */
function ticksOf([low, high]: readonly [number, number]): number[] {
  const first = Math.ceil(Math.log2(low));
  const last = Math.floor(Math.log2(high));
  const step = Math.ceil((last - first + 1) / MOST_TICKS);
  const ticks: number[] = [];
  for (let power = Math.ceil(first / step) * step; power <= last; power += step) ticks.push(2 ** power);
  return ticks;
}
