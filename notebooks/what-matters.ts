import { desc, from } from 'arquero';
import type { TopLevelSpec } from 'vega-lite';
import { answerField, PAGE_TOKENS, type QuestionInput } from '../src/index.ts';
import { demoDeps, plan } from './demo.ts';
import { type Notebook, words } from './kit/notebook.ts';
import { sayOdds } from './kit/say.ts';

/** One assumption moved to either side of what is taken. */
interface Swing {
  readonly name: string;
  readonly low: string;
  readonly high: string;
  readonly ask: readonly [Partial<QuestionInput>, Partial<QuestionInput>];
}

const assume = (change: QuestionInput['assume']): Partial<QuestionInput> => ({ assume: change });

const SWINGS: readonly Swing[] = [
  {
    name: 'moisture exponent B',
    low: '0.3',
    high: '0.8',
    ask: [assume({ moistureExponent: 0.3 }), assume({ moistureExponent: 0.8 })],
  },
  {
    name: 'moisture response',
    low: 'power of wetness',
    high: 'Walker’s',
    ask: [{}, assume({ moistureResponse: 'walker' })],
  },
  { name: 'Q10', low: '2.0', high: '3.2', ask: [assume({ q10: 2 }), assume({ q10: 3.2 })] },
  {
    name: 'spread between soils σ',
    low: '0.25',
    high: '0.5',
    ask: [assume({ soilSpread: 0.25 }), assume({ soilSpread: 0.5 })],
  },
  {
    name: 'label margin q',
    low: '0.95',
    high: '0.80',
    ask: [assume({ labelMargin: 0.95 }), assume({ labelMargin: 0.8 })],
  },
  {
    name: 'label-basis rain',
    low: '20 mm',
    high: '30 mm',
    ask: [assume({ labelRainMm: 20 }), assume({ labelRainMm: 30 })],
  },
  { name: 'ground cover', low: '1.0', high: '0', ask: [{ coverFraction: 1 }, { coverFraction: 0 }] },
  { name: 'soil', low: 'clay', high: 'sand', ask: [{ soilClass: 'clay' }, { soilClass: 'sand' }] },
  {
    name: 'base period',
    low: '1967-1996',
    high: '1997-2026',
    ask: [
      { baseFrom: 1967, baseTo: 1996 },
      { baseFrom: 1997, baseTo: 2026 },
    ],
  },
];

export interface SwingRow {
  readonly name: string;
  readonly low: string;
  readonly high: string;
  readonly oddsLow: number;
  readonly oddsHigh: number;
  readonly width: number;
}

/** Odds at planting with every assumption moved alone, the widest first. */
export async function swingRows(): Promise<{ asTaken: number; rows: SwingRow[] }> {
  const oddsOf = async (change: Partial<QuestionInput>) =>
    (await answerField({ ...plan, ...change }, demoDeps)).oddsAtPlanting ?? 0;
  const rows: SwingRow[] = [];
  for (const { name, low, high, ask } of SWINGS) {
    const [oddsLow, oddsHigh] = [await oddsOf(ask[0]), await oddsOf(ask[1])];
    rows.push({ name, low, high, oddsLow, oddsHigh, width: Math.abs(oddsHigh - oddsLow) });
  }
  return {
    asTaken: await oddsOf({}),
    rows: from(rows).orderby(desc('width')).objects() as SwingRow[],
  };
}

const IN_20 = 20;

/** Room for a name, and under it its bar. [px] */
const ROW_PX = 50;
const NAME_ABOVE_PX = 19;
/** Room right of the last number of the axis. [px] */
const RIGHT_PX = 16;

/** Bars from one end to the other about the odds as taken, the widest on top; each has its name above it. */
function tornado(rows: readonly SwingRow[], asTaken: number, widthPx: number): TopLevelSpec {
  const { ink, softInk, edge, middle, accent, font } = PAGE_TOKENS;
  const bars = rows.map(({ name, oddsLow, oddsHigh }) => ({
    name,
    from: Math.min(oddsLow, oddsHigh) * IN_20,
    to: Math.max(oddsLow, oddsHigh) * IN_20,
  }));
  const ends = rows.flatMap(({ name, low, high, oddsLow, oddsHigh }) => [
    { name, text: low, at: oddsLow * IN_20, isLeft: oddsLow <= oddsHigh },
    { name, text: high, at: oddsHigh * IN_20, isLeft: oddsHigh < oddsLow },
  ]);
  const y = { field: 'name', type: 'nominal', sort: null, axis: { title: null, labels: false } } as const;
  const x = {
    type: 'quantitative' as const,
    scale: { domain: [0, Math.max(10, ...bars.map(({ to }) => to)) + 2] },
    axis: { title: 'Odds at planting, in 20', grid: false },
  };
  const end = (isLeft: boolean) => ({
    data: { values: ends.filter((one) => one.isLeft === isLeft) },
    mark: {
      type: 'text' as const,
      align: isLeft ? ('right' as const) : ('left' as const),
      dx: isLeft ? -5 : 5,
      color: softInk,
    },
    encoding: { y, x: { ...x, field: 'at' }, text: { field: 'text' } },
  });
  return {
    width: widthPx - RIGHT_PX,
    height: { step: ROW_PX },
    background: 'transparent',
    layer: [
      {
        data: { values: [{ at: asTaken * IN_20 }] },
        mark: { type: 'rule', color: accent, strokeWidth: 2 },
        encoding: { x: { ...x, field: 'at' } },
      },
      {
        data: { values: bars },
        mark: { type: 'bar', height: 12, color: middle },
        encoding: { y, x: { ...x, field: 'from' }, x2: { field: 'to' } },
      },
      {
        data: { values: bars },
        mark: { type: 'text', align: 'left', dx: 6, dy: -NAME_ABOVE_PX, color: ink },
        encoding: { y, x: { value: 0 }, text: { field: 'name' } },
      },
      end(true),
      end(false),
    ],
    config: {
      view: { stroke: null },
      font,
      axis: {
        ...{ labelFontSize: 14, titleFontSize: 14, titleFontWeight: 'normal', ticks: false },
        ...{ labelColor: softInk, titleColor: softInk, domainColor: edge },
      },
      text: { fontSize: 14 },
    },
  };
}

export const whatMatters: Notebook = {
  name: 'what-matters',
  title: 'Which assumption matters most?',
  async cells() {
    const { asTaken, rows } = await swingRows();
    const [first, second] = rows;
    return [
      words(
        'The worked question of the first screen, asked as a plan on the demo’s invented record. Each assumption is moved alone, to either side of what the program takes; the line marks the odds with everything as taken.',
      ),
      {
        kind: 'chart',
        caption: `As taken the odds are ${sayOdds(asTaken)}; “${first.name}” moves them most, then “${second.name}”.`,
        draw: (widthPx) => tornado(rows, asTaken, widthPx),
      },
      {
        kind: 'table',
        caption: 'Odds at planting with one assumption moved at a time.',
        table: from(rows),
        columns: {
          name: { head: 'Assumption' },
          low: { head: 'To' },
          oddsLow: { head: 'gives', say: sayOdds },
          high: { head: 'or to' },
          oddsHigh: { head: 'gives', say: sayOdds },
        },
      },
      words(
        'Soil and cover are facts of the field, to be entered; the others are the model’s own, and can be changed with `--assume`. The half-life is missing here on purpose: at full rate on bare soil it cancels out.',
      ),
    ];
  },
};
