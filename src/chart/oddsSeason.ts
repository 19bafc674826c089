import type { Season } from '../schema/answer.ts';
import { MS_PER_DAY, msOf } from './dateMs.ts';
import { type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import { markLayers, markRows, onRuler, type Ruler, type RulerMarks, rulerLayer } from './ruler.ts';
import { oddsColour } from './theme.ts';
import { valueAxis } from './valueAxis.ts';

/** What the season chart takes beside its curves. */
export interface SeasonOptions extends ChartOptions {
  readonly ruler: Ruler;
  readonly marks: RulerMarks;
  /** Carryover odds that the user accepts. [0-1] */
  readonly oddsLimit: number;
  readonly heightPx?: number;
  /** A year to bring out. */
  readonly picked?: number | null;
}

/** Odds are drawn out of this many, as the sentence says them. */
const OUT_OF = 20;

/** A value of a daily curve on a date; null outside it. */
export function curveAt(values: readonly number[], startDate: string, date: string): number | null {
  return values[Math.round((msOf(date) - msOf(startDate)) / MS_PER_DAY)] ?? null;
}

/**
 * Odds over the season: every year a thin line, the odds a bold one, the limit, and the marks of the ruler.
 *
 * @example oddsSeason({ startDate: '2026-08-14', odds: [1, 0.9], years: [], yearStepDays: 1 }, { tokens: LIGHT_TOKENS, description: 'none', ruler, marks, oddsLimit: 0.1 }).height // 220
 */
export function oddsSeason(
  season: Pick<Season, 'startDate' | 'odds' | 'years' | 'yearStepDays'>,
  options: SeasonOptions,
): ChartSpec {
  const { ruler, marks, tokens, oddsLimit, heightPx = 220, picked = null } = options;
  const startMs = msOf(season.startDate);
  const inside = (ms: number) => ms <= ruler.toMs;
  const point = (value: number, days: number) => ({
    dateMs: startMs + days * MS_PER_DAY,
    in20: value * OUT_OF,
  });
  const odds = season.odds.map(point).filter(({ dateMs }) => inside(dateMs));
  const years = season.years.flatMap(({ year, third, probability }) =>
    probability
      .map((value, step) => ({ year, third, ...point(value, step * season.yearStepDays) }))
      .filter(({ dateMs }) => inside(dateMs)),
  );
  const atPlanting = curveAt(season.odds, season.startDate, marks.plantOn);
  const limit = [{ in20: oddsLimit * OUT_OF, text: 'your limit', dateMs: ruler.fromMs }];
  const here =
    atPlanting === null
      ? []
      : [{ dateMs: msOf(marks.plantOn), in20: atPlanting * OUT_OF, fill: oddsColour(tokens, atPlanting) }];

  const y = {
    field: 'in20',
    type: 'quantitative' as const,
    scale: { domain: [0, OUT_OF], nice: false },
    axis: {
      values: [0, 5, 10, 15, 20],
      ...valueAxis('Odds, in 20', ruler.leftPx),
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
      years,
      odds,
      limit,
      here,
      picked: years.filter(({ year }) => year === picked),
      ...markRows(ruler, marks),
    },
    [
      rulerLayer(ruler, tokens, true),
      {
        data: rowsOf('years'),
        mark: { type: 'line', strokeWidth: 1, opacity: 0.42, aria: false, interpolate: 'linear' },
        encoding: {
          x: onRuler(),
          y,
          detail: { field: 'year', type: 'nominal' },
          color: {
            field: 'third',
            type: 'nominal',
            legend: null,
            scale: { domain: ['dry', 'middle', 'wet'], range: [tokens.dry, tokens.middle, tokens.wet] },
          },
          strokeDash: {
            field: 'third',
            type: 'nominal',
            legend: null,
            scale: {
              domain: ['dry', 'middle', 'wet'],
              range: [
                [1, 0],
                [2, 3],
                [7, 3],
              ],
            },
          },
        },
      },
      {
        data: rowsOf('limit'),
        mark: { type: 'rule', color: tokens.softInk, strokeDash: [2, 2], strokeWidth: 1, aria: false },
        encoding: { y: { field: 'in20', type: 'quantitative' } },
      },
      {
        data: rowsOf('picked'),
        mark: { type: 'line', strokeWidth: 2, color: tokens.accent, aria: false },
        encoding: { x: onRuler(), y: { field: 'in20', type: 'quantitative' } },
      },
      ...[
        { color: tokens.sheet, strokeWidth: 6 },
        { color: tokens.ink, strokeWidth: 3 },
      ].map((line) => ({
        data: rowsOf('odds'),
        mark: { type: 'line' as const, strokeCap: 'round' as const, aria: false, ...line },
        encoding: {
          x: onRuler(),
          y: { field: 'in20', type: 'quantitative' as const },
        },
      })),
      ...markLayers(tokens),
      {
        data: rowsOf('here'),
        mark: { type: 'point', filled: true, size: 150, opacity: 1, strokeWidth: 2, aria: false },
        encoding: {
          x: onRuler(),
          y: { field: 'in20', type: 'quantitative' },
          fill: { field: 'fill', type: 'nominal', scale: null },
          stroke: { value: tokens.accent },
        },
      },
      {
        data: rowsOf('limit'),
        mark: {
          type: 'text',
          align: 'left',
          baseline: 'bottom',
          dx: 4,
          dy: -3,
          color: tokens.softInk,
          aria: false,
        },
        encoding: {
          x: onRuler(),
          y: { field: 'in20', type: 'quantitative' },
          text: { field: 'text' },
        },
      },
    ],
  );
}
