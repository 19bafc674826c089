import { type DateStyle, monthName } from '../dateWords.ts';
import type { MonthCompleteness, YearCompleteness } from '../schema/completeness.ts';
import { type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';

/** What a grid of completeness shows: days of rain, or days with both temperatures. */
export type GridElement = 'rain' | 'temperatures';

/** One month of one year in the grid. */
export interface GridRow {
  readonly year: number;
  readonly month: number;
  readonly daysPresent: number;
  readonly days: number;
  /** Left end of the cell and of its filled part's right end [months from January]. */
  readonly start: number;
  readonly filledTo: number;
  readonly end: number;
  readonly state: 'whole' | 'stands' | 'does not stand' | 'nothing';
}

/** What the grid takes beside its rows. */
export interface GridOptions extends ChartOptions {
  readonly widthPx?: number;
  readonly rowPx?: number;
  /** How months are named; by names where absent. */
  readonly dateStyle?: DateStyle;
}

/** Room between the months and a title above them. [px] */
const TITLE_GAP_PX = 12;

/** Part of a cell left free on either side. [months] */
const GAP = 0.06;
const MONTHS = Array.from({ length: 12 }, (_, index) => index + 1);
/** Rows from which every fifth or tenth year is named. */
const MANY_YEARS = 25;

const STATES = {
  complete: 'whole',
  accumulated: 'stands',
  kept: 'stands',
  incomplete: 'does not stand',
  none: 'nothing',
} as const;

/** Rows of the grid, one for each month of each year. */
export function completenessRows(years: readonly YearCompleteness[], element: GridElement): GridRow[] {
  return years.flatMap(({ year, months }) =>
    months.map((month): GridRow => {
      const daysPresent = presentDays(month, element);
      const start = month.month - 1 + GAP;
      const end = month.month - GAP;
      return {
        year,
        month: month.month,
        daysPresent,
        days: month.days,
        start,
        filledTo: start + (end - start) * (daysPresent / month.days),
        end,
        state: STATES[element === 'rain' ? month.rain : month.temperature],
      };
    }),
  );
}

const presentDays = ({ rainDays, spreadDays, temperatureDays }: MonthCompleteness, element: GridElement) =>
  element === 'rain' ? rainDays + spreadDays : temperatureDays;

/**
 * Completeness of a record: years down, months across. A cell is filled from the left by the share of its days that
 * are there; where total or mean stands it is dark, else pale within an outline, so that form tells it as well as tone.
 */
export function completenessGrid(rows: readonly GridRow[], options: GridOptions): ChartSpec {
  const { tokens, dateStyle = 'us', widthPx = 480, rowPx = 14 } = options;
  const years = [...new Set(rows.map(({ year }) => year))];
  const firstYear = Math.min(...years);
  const lastYear = Math.max(...years);
  const count = lastYear - firstYear + 1;
  const step = count > 4 * MANY_YEARS ? 10 : count > MANY_YEARS ? 5 : 1;
  const named = Array.from({ length: count }, (_, index) => firstYear + index).filter(
    (year) => year % step === 0,
  );
  const cells = rows.map((row) => ({ ...row, top: row.year - 0.42, bottom: row.year + 0.42 }));
  const x = {
    field: 'start',
    type: 'quantitative' as const,
    scale: { domain: [0, 12], nice: false },
    axis: {
      title: 'Month',
      orient: 'top' as const,
      values: MONTHS.map((_, index) => index + 0.5),
      labelExpr: `${JSON.stringify(MONTHS.map((month) => monthName(month, dateStyle)))}[floor(datum.value)]`,
      grid: false,
      domain: false,
      ticks: false,
    },
  };
  const y = {
    field: 'top',
    type: 'quantitative' as const,
    scale: { domain: [firstYear - 0.5, lastYear + 0.5], nice: false, reverse: true },
    axis: {
      title: 'Year',
      values: named,
      format: 'd',
      grid: false,
      domain: false,
      ticks: false,
    },
  };
  const y2 = { field: 'bottom' };
  const spec = framed(
    {
      widthPx,
      heightPx: count * rowPx,
      padding: { left: 70, right: 16, top: 56, bottom: 16 },
    },
    options,
    {
      cells,
      standing: cells.filter(({ state }) => state === 'whole' || state === 'stands'),
      failing: cells.filter(({ state }) => state === 'does not stand'),
    },
    [
      {
        data: rowsOf('standing'),
        mark: { type: 'rect', fill: tokens.edge, aria: false },
        encoding: { x, x2: { field: 'filledTo' }, y, y2 },
      },
      {
        data: rowsOf('failing'),
        mark: { type: 'rect', fill: tokens.rule, aria: false },
        encoding: { x, x2: { field: 'filledTo' }, y, y2 },
      },
      {
        data: rowsOf('failing'),
        mark: { type: 'rect', filled: false, stroke: tokens.edge, strokeWidth: 1.25, aria: false },
        encoding: { x, x2: { field: 'end' }, y, y2 },
      },
      {
        data: rowsOf('cells'),
        mark: { type: 'rect', fill: 'transparent', aria: false },
        encoding: {
          x,
          x2: { field: 'end' },
          y,
          y2,
          tooltip: [
            { field: 'year', type: 'quantitative', title: 'Year', format: 'd' },
            { field: 'month', type: 'quantitative', title: 'Month' },
            { field: 'daysPresent', type: 'quantitative', title: 'Days there' },
            { field: 'days', type: 'quantitative', title: 'Days in all' },
            { field: 'state', type: 'nominal', title: 'Total or mean' },
          ],
        },
      },
    ],
  ); // The months stand above the plot, between it and the title.
  return spec.title
    ? { ...spec, title: { ...(spec.title as object), offset: TITLE_GAP_PX } as typeof spec.title }
    : spec;
}
