import { type DateStyle, monthName } from '../dateWords.ts';
import type { Answer } from '../schema/answer.ts';
import { MS_PER_DAY, monthStartMs, msOf } from './dateMs.ts';
import { type ChartLayer, rowsOf } from './frame.ts';
import type { ChartTokens } from './theme.ts';

/** The one date axis that all charts of an answer hang on. */
export interface Ruler {
  readonly fromMs: number;
  readonly toMs: number;
  /** Width between the two ends. [px] */
  readonly widthPx: number;
  /** Room left and right of the ends, the same in every chart. [px] */
  readonly leftPx: number;
  readonly rightPx: number;
  /** How its dates are named: "Sep", or "09" where dates are ISO. Names where absent. */
  readonly dateStyle?: DateStyle;
}

/** Dates that are marked on the ruler. */
export interface RulerMarks {
  readonly plantOn: string;
  readonly labelDate: string;
  readonly clearDate: string | null;
}

/** Days kept free behind the last date that must be seen. */
const SPARE_DAYS = 12;
/** Least room for the name of a month. [px] */
const MONTH_NAME_PX = 40;
/** Room for a month from which its middle is named too. [px] */
const MIDDLE_PX = 150;

/**
 * Ends of the ruler: from the month of the application to the end of the month that holds the last date to be
 * seen, among planting, label date, clear date and the twenty dots; to the end of the search where a dot lies past
 * it. [ms since 1970-01-01]
 */
export function rulerEnds(
  { labelDate, clearDate, season }: Pick<Answer, 'labelDate' | 'clearDate' | 'season'>,
  appliedOn: string,
  plantOn: string,
): { fromMs: number; toMs: number } {
  const dots = season?.quantileDates ?? [];
  const dates = [plantOn, labelDate, clearDate, ...dots].map((date) => (date ? msOf(date) : 0));
  if (season && dots.includes(null)) dates.push(msOf(season.startDate) + season.odds.length * MS_PER_DAY);
  const last = Math.max(...dates);
  return { fromMs: monthStartMs(msOf(appliedOn)), toMs: monthStartMs(last + SPARE_DAYS * MS_PER_DAY, 1) };
}

/** A named date on the ruler: a month, or the 15th; the year stands under its first one. */
export interface RulerTick {
  readonly ms: number;
  readonly name: string;
  /** Year to stand below; null where an earlier tick has it already. */
  readonly year: number | null;
}

/** First days of months, as many as there is room to name. */
export function rulerTicks({ fromMs, toMs, widthPx, dateStyle = 'us' }: Ruler): RulerTick[] {
  const months = Math.round((toMs - fromMs) / (30.44 * MS_PER_DAY));
  const every = [1, 2, 3, 6, 12].find((step) => (widthPx / months) * step >= MONTH_NAME_PX) ?? 12;
  const ticks: RulerTick[] = [];
  let yearBefore = 0;
  for (let ms = fromMs; ms < toMs; ms = monthStartMs(ms, every)) {
    const date = new Date(ms);
    const name = monthName(date.getUTCMonth() + 1, dateStyle);
    const year = date.getUTCFullYear();
    ticks.push({ ms, name, year: year === yearBefore ? null : year });
    if (widthPx / months > MIDDLE_PX)
      ticks.push({
        ms: ms + 14 * MS_PER_DAY,
        name: `${name}${dateStyle === 'us' ? ' ' : '-'}15`,
        year: null,
      });
    yearBefore = year;
  }
  return ticks;
}

/** Distance of a date from the ruler's left end. [px] */
export const rulerPx = ({ fromMs, toMs, widthPx }: Ruler, ms: number): number =>
  ((ms - fromMs) / (toMs - fromMs)) * widthPx;

/** A date as Vega-Lite wants it on a UTC scale; months count from 1. */
function dateIn(ms: number) {
  const date = new Date(ms);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, date: date.getUTCDate(), utc: true };
}

/** The x channel that carries the ruler: a time scale in UTC, so that no date slips a day. */
function rulerX(ruler: Ruler, tokens: ChartTokens, named: boolean) {
  const ticks = rulerTicks(ruler);
  const names = ticks.map(({ name, year }) => (year === null ? `'${name}'` : `['${name}', '${year}']`));
  const places = ticks.map(({ ms }) => ms);
  return {
    field: 'dateMs',
    type: 'temporal' as const,
    scale: { type: 'utc' as const, domain: [dateIn(ruler.fromMs), dateIn(ruler.toMs)], nice: false },
    axis: {
      values: ticks.map(({ ms }) => dateIn(ms)),
      title: null,
      grid: true,
      gridColor: tokens.rule,
      ticks: named,
      tickSize: 5,
      labels: named,
      labelAlign: 'left' as const,
      labelOverlap: false,
      labelFlush: false,
      labelBound: false,
      labelLineHeight: 17,
      labelExpr: `[${names}][indexof([${places}], +datum.value)]`,
    },
  };
}

/** Least distance of two letters above the plot. [px] */
const LETTER_PX = 14;

/** Rows of the marks: the label date L, the clear date C and the planting date, with places for their letters. */
export function markRows(ruler: Ruler, { plantOn, labelDate, clearDate }: RulerMarks) {
  const labelMs = msOf(labelDate);
  const clearMs = clearDate === null ? null : msOf(clearDate);
  const gap = clearMs === null ? Number.POSITIVE_INFINITY : rulerPx(ruler, clearMs) - rulerPx(ruler, labelMs);
  const msPerPx = (ruler.toMs - ruler.fromMs) / ruler.widthPx;
  const push = gap > 0 && gap < LETTER_PX ? ((LETTER_PX - gap) / 2) * msPerPx : 0;
  return {
    labelMark: [{ letter: gap === 0 ? 'L C' : 'L', dateMs: labelMs, letterMs: labelMs - push }],
    clearMark:
      clearMs === null || gap === 0 ? [] : [{ letter: 'C', dateMs: clearMs, letterMs: clearMs + push }],
    planting: [{ dateMs: msOf(plantOn) }],
  };
}

/** A plain x channel for the layers above {@link rulerLayer}. */
export const onRuler = (field = 'dateMs') => ({ field, type: 'temporal' as const });

/** The lowest layer of every chart on the ruler: its axis, its grid of months and the line of the label date. */
export function rulerLayer(ruler: Ruler, tokens: ChartTokens, monthsNamed: boolean): ChartLayer {
  return {
    data: rowsOf('labelMark'),
    mark: { type: 'rule', color: tokens.ink, strokeDash: [1, 3], aria: false },
    encoding: { x: rulerX(ruler, tokens, monthsNamed) },
  };
}

/** The clear date, the letters of both dates and the planting line; rows from {@link markRows}. */
export function markLayers(tokens: ChartTokens): ChartLayer[] {
  const letter = (name: string): ChartLayer => ({
    data: rowsOf(name),
    mark: { type: 'text', y: -9, fontWeight: 700, aria: false },
    encoding: { x: onRuler('letterMs'), text: { field: 'letter' } },
  });
  return [
    {
      data: rowsOf('clearMark'),
      mark: { type: 'rule', color: tokens.ink, strokeDash: [6, 3], aria: false },
      encoding: { x: onRuler() },
    },
    letter('labelMark'),
    letter('clearMark'),
    {
      data: rowsOf('planting'),
      mark: { type: 'rule', color: tokens.accent, strokeWidth: 2, aria: false },
      encoding: { x: onRuler() },
    },
  ];
}
