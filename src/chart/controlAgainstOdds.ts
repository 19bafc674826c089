import type { ResidualRow } from '../schema/comparison.ts';
import { type ChartLayer, type ChartOptions, type ChartSpec, framed, rowsOf } from './frame.ts';
import { placeLabels } from './placeLabels.ts';
import { oddsColour } from './theme.ts';
import { valueAxis } from './valueAxis.ts';

/** What the chart needs of a residual. */
export type ControlRow = Pick<
  ResidualRow,
  'residual' | 'oddsAtPlanting' | 'thirdOdds' | 'weeksOfControl' | 'labelAllows'
> & { readonly interval: Pick<ResidualRow['interval'], 'fromMemory'> };

/** What the chart takes beside its rows. */
export interface ControlOptions extends ChartOptions {
  readonly widthPx: number;
  readonly heightPx?: number;
  /** Carryover odds that the user accepts. [0-1] */
  readonly oddsLimit: number;
  /** Residuals to ring. */
  readonly picked?: readonly string[];
}

const OUT_OF = 20;
/** The axis of the odds reaches at least this far, so that low odds look low. */
const LEAST_TOP = 10;
/** The axis of the weeks reaches at least this far. [weeks] */
const LEAST_WEEKS = 8;
/** Weeks past the search are drawn at its end. [weeks] */
const LONGEST_WEEKS = 150;
/** Marks nearer than this to each other are drawn as one. [px] */
const SAME_PX = 5;
const PADDING = { left: 40, right: 26, top: 36, bottom: 50 };
/** From this width on the lane has room for its whole name. [px] */
const WIDE_LANE_PX = 120;
/** Points taken along a line, to keep names off it. */
const ALONG = 6;
/** A saltire: lines only, so that it reads as struck out. */
const STRUCK = 'M-0.8,-0.8L0.8,0.8M-0.8,0.8L0.8,-0.8';

/**
 * Odds on the planting date against weeks of weed control: a mark for each residual, joined to its dry third (a
 * triangle) and its wet third (a square). A broken outline where the interval rests on memory, a struck-out mark
 * where the label rules the date out; residuals without a half-life stand in a lane of their own at the left.
 */
export function controlAgainstOdds(rows: readonly ControlRow[], options: ControlOptions): ChartSpec {
  const { tokens, widthPx, heightPx = 300, oddsLimit, picked = [] } = options;
  const drawn = rows.filter((row) => row.oddsAtPlanting !== null);
  const hasLane = drawn.some(({ weeksOfControl }) => weeksOfControl === null);
  const lanePx = hasLane ? Math.min(150, Math.round(widthPx * 0.23)) : 0;
  const plotPx = widthPx - PADDING.left - PADDING.right - lanePx;
  const weeksOf = (weeks: number | null) => weeks ?? LONGEST_WEEKS;
  const mostWeeks = Math.max(
    LEAST_WEEKS,
    ...drawn.flatMap(({ weeksOfControl: w }) => (w === null ? [] : [w.dry, w.middle, w.wet].map(weeksOf))),
  );
  const endWeeks = mostWeeks * 1.08;
  const mostIn20 = Math.max(
    0,
    ...drawn.map((row) => Math.max(row.oddsAtPlanting ?? 0, row.thirdOdds?.dry ?? 0) * OUT_OF),
  );
  const top = Math.min(OUT_OF, Math.max(LEAST_TOP, 5 * Math.ceil(mostIn20 / 5)));
  const inLane = -((lanePx - 18) / plotPx) * endWeeks;
  const at = (weeks: number | null | undefined) => (weeks === undefined ? inLane : weeksOf(weeks));
  const point = (weeks: number | null | undefined, odds: number) => ({
    weeks: at(weeks),
    in20: odds * OUT_OF,
  });
  const xPx = (weeks: number) => (weeks / endWeeks) * plotPx;
  const yPx = (in20: number) => heightPx - (in20 / top) * heightPx;

  const marks = drawn.map((row) => {
    const odds = row.oddsAtPlanting ?? 0;
    return {
      name: row.residual,
      kind: `${row.labelAllows ? 'allowed' : 'struck'}${row.interval.fromMemory ? 'Memory' : ''}`,
      fill: oddsColour(tokens, odds),
      ...point(row.weeksOfControl?.middle, odds),
    };
  });
  const ranges = drawn.flatMap((row) =>
    row.thirdOdds === null
      ? []
      : [
          { name: row.residual, step: 0, ...point(row.weeksOfControl?.wet, row.thirdOdds.wet) },
          { name: row.residual, step: 1, ...point(row.weeksOfControl?.middle, row.oddsAtPlanting ?? 0) },
          { name: row.residual, step: 2, ...point(row.weeksOfControl?.dry, row.thirdOdds.dry) },
        ],
  );
  const groups = together(marks, ({ weeks, in20 }) => ({ x: xPx(weeks), y: yPx(in20) }));
  const named = groups.map(([first, ...more]) => ({
    text: more.length === 0 ? first.name : `${first.name} +${more.length}`,
    x: xPx(first.weeks),
    y: yPx(first.in20),
  }));
  const thin = ranges.flatMap((row, index) => (row.step === 0 ? [] : along(ranges[index - 1], row)));
  const places = placeLabels(
    named,
    {
      left: -lanePx,
      right: plotPx + PADDING.right,
      top: -14,
      bottom: heightPx + 6,
    },
    thin.map(({ weeks, in20 }) => ({ x: xPx(weeks), y: yPx(in20) })),
  );
  const labels = places.flatMap((place, index) =>
    place === null
      ? []
      : [
          {
            name: groups[index][0].name,
            text: named[index].text,
            align: place.align,
            weeks: (place.x / plotPx) * endWeeks,
            in20: ((heightPx - place.y) / heightPx) * top,
          },
        ],
  );
  const x = {
    field: 'weeks',
    type: 'quantitative' as const,
    scale: { domain: [0, endWeeks], nice: false },
    axis: { title: 'Weeks of weed control', titlePadding: 8, tickCount: 6, grid: false, tickSize: 4 },
  };
  const y = {
    field: 'in20',
    type: 'quantitative' as const,
    scale: { domain: [0, top], nice: false },
    axis: {
      values: [0, 5, 10, 15, 20].filter((value) => value <= top),
      ...valueAxis('Odds on the planting date, in 20', PADDING.left),
      offset: lanePx,
    },
  };
  const plainY = { field: 'in20', type: 'quantitative' as const };
  const marked = (kind: string): ChartLayer => ({
    data: rowsOf(kind),
    mark: {
      type: 'point',
      shape: kind.startsWith('struck') ? STRUCK : 'circle',
      size: 110,
      opacity: 1,
      strokeWidth: 1.75,
      stroke: kind.startsWith('struck') ? tokens.softInk : tokens.ink,
      aria: false,
      ...(kind.endsWith('Memory') && { strokeDash: [3, 2] }),
    },
    encoding: {
      x,
      y,
      ...(kind === 'allowed'
        ? { fill: { field: 'fill', type: 'nominal' as const, scale: null } }
        : { fill: { value: kind === 'allowedMemory' ? tokens.paper : 'transparent' } }),
    },
  });
  const end = (name: string, shape: string, colour: string): ChartLayer => ({
    data: rowsOf(name),
    mark: { type: 'point', filled: true, shape, size: 44, color: colour, opacity: 1, aria: false },
    encoding: { x, y },
  });
  const ofKind = (kind: string) => marks.filter((mark) => mark.kind === kind);
  const label = (align: 'left' | 'center' | 'right'): ChartLayer => ({
    data: rowsOf(`${align}Labels`),
    mark: { type: 'text', align, baseline: 'middle', aria: false },
    encoding: { x, y: plainY, text: { field: 'text' } },
  });
  return framed(
    { widthPx: plotPx, heightPx, padding: { ...PADDING, left: PADDING.left + lanePx } },
    options,
    {
      limit: [{ in20: oddsLimit * OUT_OF, weeks: endWeeks, text: 'your limit' }],
      lane: hasLane
        ? [
            {
              weeks: -((lanePx / plotPx) * endWeeks) / 2,
              text: lanePx < WIDE_LANE_PX ? 'not known' : 'weeks not known',
              edge: 0,
            },
          ]
        : [],
      ranges,
      dryEnds: ranges.filter(({ step }) => step === 2),
      wetEnds: ranges.filter(({ step }) => step === 0),
      struck: ofKind('struck'),
      struckMemory: ofKind('struckMemory'),
      allowed: ofKind('allowed'),
      allowedMemory: ofKind('allowedMemory'),
      picked: marks.filter(({ name }) => picked.includes(name)),
      leftLabels: labels.filter(({ align }) => align === 'left'),
      centerLabels: labels.filter(({ align }) => align === 'center'),
      rightLabels: labels.filter(({ align }) => align === 'right'),
    },
    [
      {
        data: rowsOf('limit'),
        mark: {
          type: 'rule',
          x: -lanePx,
          x2: plotPx,
          color: tokens.softInk,
          strokeDash: [2, 2],
          aria: false,
        },
        encoding: { y },
      },
      {
        data: rowsOf('lane'),
        mark: { type: 'rule', color: tokens.rule, strokeWidth: 1.5, aria: false },
        encoding: { x: { field: 'edge', type: 'quantitative' } },
      },
      {
        data: rowsOf('lane'),
        mark: { type: 'text', y: heightPx + 14, color: tokens.softInk, aria: false },
        encoding: { x: { field: 'weeks', type: 'quantitative' }, text: { field: 'text' } },
      },
      {
        data: rowsOf('ranges'),
        mark: { type: 'line', color: tokens.edge, strokeWidth: 1.25, aria: false },
        encoding: {
          x,
          y: plainY,
          detail: { field: 'name', type: 'nominal' },
          order: { field: 'step', type: 'quantitative' },
        },
      },
      end('wetEnds', 'square', tokens.wet),
      end('dryEnds', 'triangle-up', tokens.dry),
      ...['struck', 'struckMemory', 'allowed', 'allowedMemory'].map(marked),
      {
        data: rowsOf('picked'),
        mark: {
          type: 'point',
          shape: 'circle',
          size: 300,
          stroke: tokens.accent,
          strokeWidth: 2,
          aria: false,
        },
        encoding: { x, y: plainY },
      },
      ...(['left', 'center', 'right'] as const).map(label),
      {
        data: rowsOf('limit'),
        mark: { type: 'text', align: 'right', dy: -8, color: tokens.softInk, aria: false },
        encoding: { x: { field: 'weeks', type: 'quantitative' }, y: plainY, text: { field: 'text' } },
      },
    ],
  );
}

interface Point {
  readonly weeks: number;
  readonly in20: number;
}

/** Points of the straight line between two. */
const along = (from: Point, to: Point): Point[] =>
  Array.from({ length: ALONG }, (_, index) => {
    const share = (index + 1) / ALONG;
    return {
      weeks: from.weeks + (to.weeks - from.weeks) * share,
      in20: from.in20 + (to.in20 - from.in20) * share,
    };
  });

/** Puts rows of one kind that lie on each other into groups. */
function together<Row extends { readonly kind: string }>(
  rows: readonly Row[],
  place: (row: Row) => { x: number; y: number },
): Row[][] {
  const groups: Row[][] = [];
  for (const row of rows) {
    const { x, y } = place(row);
    const near = groups.find(([first]) => {
      const other = place(first);
      return first.kind === row.kind && Math.hypot(other.x - x, other.y - y) < SAME_PX;
    });
    if (near) near.push(row);
    else groups.push([row]);
  }
  return groups;
}
