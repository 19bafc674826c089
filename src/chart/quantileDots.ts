import type { Season } from '../schema/answer.ts';
import { msOf } from './dateMs.ts';
import { type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import { pileDots } from './pileDots.ts';
import { markLayers, markRows, onRuler, type Ruler, type RulerMarks, rulerLayer, rulerPx } from './ruler.ts';
import { oddsColour } from './theme.ts';

/** One of the twenty dots. */
export interface DotRow {
  /** 1 to 20. */
  readonly dot: number;
  /** Date from which the odds stay under the dot's level; null past the search. */
  readonly date: string | null;
  /** The level: 1 − (dot − 0.5)/20. [0-1] */
  readonly oddsUnder: number;
}

/** What the dots chart takes beside its rows. */
export interface DotsOptions extends ChartOptions {
  readonly ruler: Ruler;
  readonly marks: RulerMarks;
  /** Odds on the planting date, for the colour of the dots that count. [0-1] */
  readonly oddsAtPlanting: number;
  /** Largest size of a dot. [px] */
  readonly dotPx?: number;
  /** Names the months below, where no other ruler stands there. */
  readonly monthsNamed?: boolean;
}

/** Rows of the twenty dots of a season. */
export const dotRows = ({ quantileDates }: Pick<Season, 'quantileDates'>): DotRow[] =>
  quantileDates.map((date, index) => ({
    dot: index + 1,
    date,
    oddsUnder: 1 - (index + 0.5) / quantileDates.length,
  }));

/** Whether a dot lies after the planting date: as many as the odds say, of twenty. */
export const dotCounts = ({ date }: Pick<DotRow, 'date'>, plantOn: string): boolean =>
  date === null || date > plantOn;

/** Room above the pile for the letters of the marks. [px] */
const TOP_PX = 26;
/** Room below it for the names of months. [px] */
const NAMES_PX = 42;
const LEAST_DOTS_HIGH = 4;

/**
 * Twenty dots on the ruler: when the field is clear. Dots after the planting marker are filled in the colour of
 * the odds, the others are open; dots past the search stand at the right end.
 *
 * @example quantileDots([], { tokens: LIGHT_TOKENS, description: 'none', ruler, marks, oddsAtPlanting: 0.2 }).height // 80
 */
export function quantileDots(rows: readonly DotRow[], options: DotsOptions): ChartSpec {
  const { ruler, marks, tokens, oddsAtPlanting, monthsNamed = false } = options;
  const dotPx = Math.min(options.dotPx ?? 20, ruler.widthPx / 30);
  const places = rows.map(({ date }) =>
    date === null ? ruler.widthPx : Math.min(ruler.widthPx, rulerPx(ruler, msOf(date))),
  );
  const piled = pileDots(places, dotPx + 1);
  const heightPx = Math.max(LEAST_DOTS_HIGH * dotPx, ...piled.map(({ y }) => Math.ceil(y + dotPx)));
  const dots = rows.map((row, index) => ({
    ...row,
    dateMs: row.date === null ? ruler.toMs : Math.min(ruler.toMs, msOf(row.date)),
    height: piled[index].y,
    counts: dotCounts(row, marks.plantOn),
    fill: dotCounts(row, marks.plantOn) ? oddsColour(tokens, oddsAtPlanting) : tokens.sheet,
  }));
  const past = rows.filter(({ date }) => date === null).length;
  const size = {
    widthPx: ruler.widthPx,
    heightPx,
    padding: { left: ruler.leftPx, right: ruler.rightPx, top: TOP_PX, bottom: monthsNamed ? NAMES_PX : 2 },
  };
  return framed(
    size,
    options,
    {
      dots,
      ...markRows(ruler, marks),
      past: past === 0 ? [] : [{ text: `${past} past the search`, dateMs: ruler.toMs }],
    },
    [
      rulerLayer(ruler, tokens, monthsNamed),
      ...markLayers(tokens),
      {
        data: rowsOf('dots'),
        mark: { type: 'circle', size: dotPx ** 2, opacity: 1, strokeWidth: 1.25, clip: false, aria: false },
        encoding: {
          x: onRuler(),
          y: {
            field: 'height',
            type: 'quantitative',
            scale: { domain: [0, heightPx], nice: false, zero: true },
            axis: null,
          },
          fill: { field: 'fill', type: 'nominal', scale: null },
          stroke: {
            condition: { test: 'datum.counts', value: tokens.ink },
            value: tokens.edge,
          },
        },
      },
      {
        data: rowsOf('past'),
        mark: { type: 'text', align: 'right', baseline: 'bottom', dx: 12, y: -2, color: tokens.softInk },
        encoding: { x: onRuler(), text: { field: 'text' } },
      },
    ],
  );
}
