import type { Hindcast } from '../schema/hindcast.ts';
import { type ChartLayer, type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import { valueAxis } from './valueAxis.ts';

type Bin = Pick<
  Hindcast['overall']['bins'][number],
  'meanOdds' | 'observed' | 'low' | 'high' | 'forecasts' | 'years'
>;

/** What the reliability chart takes beside its bands. */
export interface ReliabilityOptions extends ChartOptions {
  readonly widthPx: number;
  readonly heightPx?: number;
  /** Share of all soils and years in which harm came. [0-1] */
  readonly baseRate: number;
}

const OUT_OF = 20;
const PADDING = { left: 44, right: 24, top: 34, bottom: 48 };
/** Least and largest area of a dot. [px²] */
const DOT_AREA = [40, 360] as const;

/**
 * Odds given against the share of times that harm then came: a dot for each band of odds, as large as it is often used,
 * with the interval that chance leaves and, above it, the number of years; on the slanting line both are alike.
 * @example reliability([], { tokens: LIGHT_TOKENS, description: 'none', widthPx: 400, baseRate: 0.2 }).height // 300
 */
export function reliability(bins: readonly Bin[], options: ReliabilityOptions): ChartSpec {
  const { tokens, widthPx, heightPx = 300, baseRate } = options;
  const most = Math.max(1, ...bins.map(({ forecasts }) => forecasts));
  const bands = bins.map(({ meanOdds, observed, low, high, forecasts, years }) => ({
    said: meanOdds * OUT_OF,
    came: observed * OUT_OF,
    low: low * OUT_OF,
    high: high * OUT_OF,
    area: DOT_AREA[0] + (DOT_AREA[1] - DOT_AREA[0]) * (forecasts / most),
    text: `${years}`,
  }));
  const values = [0, 5, 10, 15, 20];
  const scale = { domain: [0, OUT_OF], nice: false };
  const x = {
    field: 'said',
    type: 'quantitative' as const,
    scale,
    axis: { values, title: 'Odds given, in 20', titlePadding: 8, grid: false, tickSize: 4 },
  };
  const y = {
    field: 'came',
    type: 'quantitative' as const,
    scale,
    axis: {
      ...valueAxis('Harm then came, in 20 (numbers: years)', PADDING.left),
      values,
    },
  };
  const line = (name: string, dash: number[]): ChartLayer => ({
    data: rowsOf(name),
    mark: { type: 'line', color: tokens.softInk, strokeWidth: 1, strokeDash: dash, aria: false },
    encoding: { x, y },
  });
  return framed(
    { widthPx: widthPx - PADDING.left - PADDING.right, heightPx, padding: PADDING },
    options,
    {
      honest: [
        { said: 0, came: 0 },
        { said: OUT_OF, came: OUT_OF },
      ],
      base: [
        { said: 0, came: baseRate * OUT_OF },
        { said: OUT_OF, came: baseRate * OUT_OF },
      ],
      bands,
    },
    [
      line('base', [2, 3]),
      line('honest', []),
      {
        data: rowsOf('bands'),
        mark: { type: 'rule', color: tokens.ink, strokeWidth: 1.5, aria: false },
        encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' } },
      },
      {
        data: rowsOf('bands'),
        mark: { type: 'point', shape: 'circle', filled: true, color: tokens.accent, opacity: 1, aria: false },
        encoding: {
          x,
          y,
          size: { field: 'area', type: 'quantitative' as const, scale: null, legend: null },
        },
      },
      {
        data: rowsOf('bands'),
        mark: {
          type: 'text',
          align: 'center',
          baseline: 'bottom',
          dy: -4,
          color: tokens.softInk,
          aria: false,
        },
        encoding: { x, y: { ...y, field: 'high' }, text: { field: 'text' } },
      },
    ],
  );
}
