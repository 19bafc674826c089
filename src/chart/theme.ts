import type { Config } from 'vega-lite';
import { oddsStep } from './oddsScale.ts';

/** Colours and type that a chart draws with. */
export interface ChartTokens {
  readonly paper: string;
  readonly sheet: string;
  readonly ink: string;
  readonly softInk: string;
  /** Decoration only: too faint to carry meaning. */
  readonly rule: string;
  readonly edge: string;
  /** The planting marker. */
  readonly accent: string;
  readonly dry: string;
  readonly middle: string;
  readonly wet: string;
  /** Seven steps, lowest odds first; this hue means odds and nothing else. */
  readonly odds: readonly string[];
  readonly font: string;
}

const FONT = "'Atkinson Hyperlegible Next Variable', 'Atkinson Hyperlegible Next', Verdana, sans-serif";
const ODDS = ['#eedfce', '#e2bfaf', '#d49d9a', '#bd7e8d', '#975a79', '#6b3c65', '#402548'];

/** Ink on paper, for day and for print. */
export const LIGHT_TOKENS: ChartTokens = {
  paper: '#f6f3ea',
  sheet: '#fffdf7',
  ink: '#23271f',
  softInk: '#56594c',
  rule: '#d9d3c2',
  edge: '#7b7765',
  accent: '#0e5560',
  dry: '#5b3206',
  middle: '#6f7166',
  wet: '#4f80c4',
  odds: ODDS,
  font: FONT,
};

/** Light ink on dark paper; odds keep their colours, because one colour has one meaning. */
export const DARK_TOKENS: ChartTokens = {
  paper: '#181a17',
  sheet: '#22251f',
  ink: '#ece8dc',
  softInk: '#b7b3a5',
  rule: '#3b3e36',
  edge: '#8b8876',
  accent: '#7cc5cb',
  dry: '#f3c183',
  middle: '#a3a598',
  wet: '#6f97d8',
  odds: ODDS,
  font: FONT,
};

/** Custom properties of a page's style sheet, so that its theme and its print style reach into a drawn SVG. */
export const PAGE_TOKENS: ChartTokens = {
  paper: 'var(--paper)',
  sheet: 'var(--sheet)',
  ink: 'var(--ink)',
  softInk: 'var(--soft-ink)',
  rule: 'var(--rule)',
  edge: 'var(--edge)',
  accent: 'var(--accent)',
  dry: 'var(--dry)',
  middle: 'var(--middle)',
  wet: 'var(--wet)',
  odds: [0, 1, 2, 3, 4, 5, 6].map((step) => `var(--odds-${step})`),
  font: FONT,
};

/** Colour of a probability on the odds scale. */
export const oddsColour = (tokens: ChartTokens, odds: number): string => tokens.odds[oddsStep(odds)];

/** Size of all lettering in a chart. [px] */
export const LETTERING_PX = 14;

/** Vega-Lite configuration shared by all charts. */
export function chartConfig(tokens: ChartTokens): Config {
  return {
    background: 'transparent',
    font: tokens.font,
    view: { stroke: null },
    axis: {
      labelColor: tokens.softInk,
      labelFontSize: LETTERING_PX,
      titleColor: tokens.softInk,
      titleFontSize: LETTERING_PX,
      titleFontWeight: 'normal',
      domainColor: tokens.edge,
      tickColor: tokens.edge,
      gridColor: tokens.rule,
    },
    title: {
      anchor: 'start',
      color: tokens.ink,
      fontSize: 17,
      fontWeight: 500,
      subtitleColor: tokens.softInk,
      subtitleFontSize: LETTERING_PX,
    },
    text: { color: tokens.ink, fontSize: LETTERING_PX },
  };
}
