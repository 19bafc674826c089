import type { Answer } from '../schema/answer.ts';
import { type ChartLayer, type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import type { RainUnit } from './rainMonths.ts';

type YearRow = Pick<Answer['years'][number], 'year' | 'third' | 'probability' | 'warmRainMm'>;

/** What the chart of the years takes beside its rows. */
export interface ScatterOptions extends ChartOptions {
  readonly widthPx: number;
  readonly heightPx?: number;
  readonly rainUnit: RainUnit;
  /** Converts millimetres to the unit. */
  readonly rainIn: (mm: number) => number;
  /** Carryover odds that the user accepts. [0-1] */
  readonly oddsLimit: number;
  /** A year to bring out. */
  readonly picked?: number | null;
}

const OUT_OF = 20;
/** The axis of the odds reaches at least this far, so that low odds look low. */
const LEAST_TOP = 10;
/** Room that the name of a year needs beside its sign. [px] */
const NAME_PX = 46;
const PADDING = { left: 44, right: 20, top: 34, bottom: 48 };

/** The year with the least warm rain. */
export const driestYear = <Row extends YearRow>(rows: readonly Row[]): Row | undefined =>
  rows.reduce<Row | undefined>(
    (least, row) => (least && least.warmRainMm <= row.warmRainMm ? least : row),
    undefined,
  );

/**
 * Odds of every year against its warm rain; thirds told apart by shape and filling, the driest year named.
 * @example yearScatter([], { tokens: LIGHT_TOKENS, description: 'none', widthPx: 400, rainUnit: 'mm', rainIn: (mm) => mm, oddsLimit: 0.1 }).height // 220
 */
export function yearScatter(rows: readonly YearRow[], options: ScatterOptions): ChartSpec {
  const { tokens, widthPx, heightPx = 220, rainUnit, rainIn, oddsLimit, picked = null } = options;
  const years = rows.map(({ year, third, probability, warmRainMm }) => ({
    year,
    third,
    in20: probability * OUT_OF,
    warmRain: rainIn(warmRainMm),
  }));
  const driest = driestYear(rows);
  const plotWidthPx = widthPx - PADDING.left - PADDING.right;
  const top = Math.min(
    OUT_OF,
    Math.max(LEAST_TOP, 5 * Math.ceil(Math.max(0, ...years.map(({ in20 }) => in20)) / 5)),
  );
  const most = Math.max(...years.map(({ warmRain }) => warmRain), rainIn(25));
  const x = {
    field: 'warmRain',
    type: 'quantitative' as const,
    scale: { domain: [0, most * 1.04], nice: false },
    axis: {
      title: `Warm rain, ${rainUnit}`,
      titlePadding: 8,
      tickCount: 5,
      grid: false,
      tickSize: 4,
    },
  };
  const y = {
    field: 'in20',
    type: 'quantitative' as const,
    scale: { domain: [0, top], nice: false },
    axis: {
      values: [0, 5, 10, 15, 20].filter((value) => value <= top),
      title: 'Odds in that year, in 20',
      titleAlign: 'left' as const,
      titleAnchor: 'end' as const,
      titleAngle: 0,
      titleX: -PADDING.left,
      titleY: -14,
      titleBaseline: 'bottom' as const,
      domain: false,
      ticks: false,
      labelPadding: 8,
      gridColor: tokens.rule,
    },
  };
  const third = (name: 'dry' | 'middle' | 'wet', shape: string, filled: boolean): ChartLayer => ({
    data: rowsOf(name),
    mark: {
      type: 'point',
      shape,
      filled,
      size: shape === 'square' ? 58 : 66,
      color: tokens[name],
      strokeWidth: 1.5,
      opacity: 0.9,
      aria: false,
    },
    encoding: { x, y },
  });
  const of = (name: string) => years.filter((row) => row.third === name);
  const called = (wanted: number | null | undefined) =>
    years.filter(({ year }) => year === wanted).map((row) => ({ ...row, text: `${row.year}` }));
  const named = called(driest?.year);
  const roomLeft = named.length > 0 && (named[0].warmRain / most) * plotWidthPx > NAME_PX;
  return framed(
    { widthPx: plotWidthPx, heightPx, padding: PADDING },
    options,
    {
      dry: of('dry'),
      middle: of('middle'),
      wet: of('wet'),
      named,
      picked: called(picked),
      limit: [{ in20: oddsLimit * OUT_OF }],
    },
    [
      {
        data: rowsOf('limit'),
        mark: { type: 'rule', color: tokens.softInk, strokeDash: [2, 2], aria: false },
        encoding: { y },
      },
      third('wet', 'square', true),
      third('middle', 'circle', false),
      third('dry', 'triangle-up', true),
      {
        data: rowsOf('picked'),
        mark: {
          type: 'point',
          shape: 'circle',
          size: 260,
          stroke: tokens.accent,
          strokeWidth: 2,
          aria: false,
        },
        encoding: { x, y },
      },
      {
        data: rowsOf('named'),
        mark: {
          type: 'text',
          ...(roomLeft ? { align: 'right', dx: -9 } : { dy: -14 }),
          fontWeight: 600,
          aria: false,
        },
        encoding: { x, y, text: { field: 'text' } },
      },
      {
        data: rowsOf('picked'),
        mark: { type: 'text', dy: -18, fontWeight: 600, color: tokens.accent, aria: false },
        encoding: { x, y, text: { field: 'text' } },
      },
    ],
  );
}
