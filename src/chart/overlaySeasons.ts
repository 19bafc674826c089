import type { Season } from '../schema/answer.ts';
import { MS_PER_DAY, monthStartMs, msOf } from './dateMs.ts';
import { type ChartLayer, type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import { curveAt } from './oddsSeason.ts';
import { onRuler, type Ruler, rulerLayer } from './ruler.ts';
import { valueAxis } from './valueAxis.ts';

/** The season of one residual among those that are laid over each other. */
export interface OverlaidSeason {
  /** A letter that stands on its line and in the key. */
  readonly letter: string;
  readonly startDate: string;
  /** Odds on each day from the start on. [0-1] */
  readonly odds: Season['odds'];
  readonly labelDate: string;
  readonly clearDate: string | null;
}

/** What the chart takes beside its curves. */
export interface OverlayOptions extends ChartOptions {
  readonly ruler: Ruler;
  readonly plantOn: string;
  /** Carryover odds that the user accepts. [0-1] */
  readonly oddsLimit: number;
  readonly heightPx?: number;
}

const OUT_OF = 20;
/** Lines are told apart by their dashes and letters; the colours of the odds mean odds only. */
export const OVERLAY_DASHES: readonly (readonly number[])[] = [
  [1, 0],
  [8, 4],
  [2, 3],
];
/** Where along the season each line bears its letter: at different heights and dates. (0-1 of the odds) */
const LETTER_AT = [0.8, 0.55, 0.3];
/** Days kept free behind the last date that must be seen. */
const SPARE_DAYS = 12;

/**
 * Ends of a ruler that holds the application, the planting date and all label and clear dates.
 * [ms since 1970-01-01]
 */
export function overlayEnds(seasons: readonly OverlaidSeason[], plantOn: string) {
  const starts = seasons.map(({ startDate }) => msOf(startDate));
  const dates = seasons.flatMap(({ labelDate, clearDate }) => [labelDate, clearDate ?? labelDate]);
  const last = Math.max(msOf(plantOn), ...dates.map(msOf));
  return {
    fromMs: monthStartMs(Math.min(msOf(plantOn), ...starts)),
    toMs: monthStartMs(last + SPARE_DAYS * MS_PER_DAY, 1),
  };
}

/**
 * Odds of several residuals over one season on the date ruler: a line for each, thin before its label date and bold
 * from there on, an open ring on its clear date.
 */
export function overlaySeasons(seasons: readonly OverlaidSeason[], options: OverlayOptions): ChartSpec {
  const { ruler, plantOn, tokens, oddsLimit, heightPx = 230 } = options;
  const curves = seasons.map((season, index) => {
    const startMs = msOf(season.startDate);
    const points = season.odds
      .map((odds, day) => ({
        letter: season.letter,
        index,
        dateMs: startMs + day * MS_PER_DAY,
        in20: odds * OUT_OF,
      }))
      .filter(({ dateMs }) => dateMs <= ruler.toMs);
    const labelMs = msOf(season.labelDate);
    const clear = season.clearDate;
    const clearOdds = clear === null ? null : curveAt(season.odds, season.startDate, clear);
    return {
      before: points.filter(({ dateMs }) => dateMs <= labelMs),
      after: points.filter(({ dateMs }) => dateMs >= labelMs),
      clear: clear === null || clearOdds === null ? [] : [{ dateMs: msOf(clear), in20: clearOdds * OUT_OF }],
      letter: letterPlace(points, LETTER_AT[index % LETTER_AT.length]),
    };
  });
  const y = {
    field: 'in20',
    type: 'quantitative' as const,
    scale: { domain: [0, OUT_OF], nice: false },
    axis: { values: [0, 5, 10, 15, 20], ...valueAxis('Odds, in 20', ruler.leftPx) },
  };
  const plainY = { field: 'in20', type: 'quantitative' as const };
  const dashes = {
    field: 'index',
    type: 'nominal' as const,
    legend: null,
    scale: {
      domain: OVERLAY_DASHES.map((_, index) => index),
      range: OVERLAY_DASHES.map((dash) => [...dash]),
    },
  };
  const lines = (name: string, strokeWidth: number): ChartLayer => ({
    data: rowsOf(name),
    mark: { type: 'line', color: tokens.ink, strokeWidth, aria: false },
    encoding: { x: onRuler(), y, strokeDash: dashes, detail: { field: 'letter', type: 'nominal' } },
  });
  return framed(
    {
      widthPx: ruler.widthPx,
      heightPx,
      padding: { left: ruler.leftPx, right: ruler.rightPx, top: 36, bottom: 42 },
    },
    options,
    {
      labelMark: labelLetters(seasons),
      limit: [{ in20: oddsLimit * OUT_OF, dateMs: ruler.fromMs, text: 'your limit' }],
      before: curves.flatMap(({ before }) => before),
      after: curves.flatMap(({ after }) => after),
      clear: curves.flatMap(({ clear }) => clear),
      letters: curves.flatMap(({ letter }) => letter),
      planting: [{ dateMs: msOf(plantOn) }],
    },
    [
      rulerLayer(ruler, tokens, true),
      {
        data: rowsOf('labelMark'),
        mark: { type: 'text', y: -9, fontWeight: 700, aria: false },
        encoding: { x: onRuler(), text: { field: 'letter' } },
      },
      {
        data: rowsOf('limit'),
        mark: { type: 'rule', color: tokens.softInk, strokeDash: [2, 2], strokeWidth: 1, aria: false },
        encoding: { y: plainY },
      },
      lines('before', 1.25),
      lines('after', 2.75),
      {
        data: rowsOf('planting'),
        mark: { type: 'rule', color: tokens.accent, strokeWidth: 2, aria: false },
        encoding: { x: onRuler() },
      },
      {
        data: rowsOf('clear'),
        mark: {
          type: 'point',
          shape: 'circle',
          size: 90,
          fill: tokens.paper,
          stroke: tokens.ink,
          strokeWidth: 2,
          opacity: 1,
          aria: false,
        },
        encoding: { x: onRuler(), y: plainY },
      },
      {
        data: rowsOf('letters'),
        mark: {
          type: 'point',
          shape: 'circle',
          size: 330,
          fill: tokens.paper,
          stroke: tokens.edge,
          opacity: 1,
          aria: false,
        },
        encoding: { x: onRuler(), y: plainY },
      },
      {
        data: rowsOf('letters'),
        mark: { type: 'text', fontWeight: 700, baseline: 'middle', aria: false },
        encoding: { x: onRuler(), y: plainY, text: { field: 'letter' } },
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
        encoding: { x: onRuler(), y: plainY, text: { field: 'text' } },
      },
    ],
  );
}

/** The first point at or under a height; the last one where the line never comes down so far. */
function letterPlace<Point extends { readonly in20: number }>(
  points: readonly Point[],
  odds: number,
): Point[] {
  const found = points.find(({ in20 }) => in20 <= odds * OUT_OF) ?? points.at(-1);
  return found === undefined ? [] : [found];
}

/** Letters above the label dates; those of one date stand together. */
function labelLetters(seasons: readonly OverlaidSeason[]) {
  const dates = [...new Set(seasons.map(({ labelDate }) => labelDate))];
  return dates.map((date) => ({
    dateMs: msOf(date),
    letter: seasons
      .filter(({ labelDate }) => labelDate === date)
      .map(({ letter }) => letter)
      .join(' '),
  }));
}
