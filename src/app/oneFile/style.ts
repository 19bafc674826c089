import { type ChartTokens, DARK_TOKENS, LIGHT_TOKENS } from '../../chart/theme.ts';

const colours = (tokens: ChartTokens): string =>
  [
    `--paper: ${tokens.paper}; --sheet: ${tokens.sheet}; --ink: ${tokens.ink}; --soft-ink: ${tokens.softInk};`,
    `--rule: ${tokens.rule}; --edge: ${tokens.edge}; --accent: ${tokens.accent};`,
    `--dry: ${tokens.dry}; --middle: ${tokens.middle}; --wet: ${tokens.wet};`,
    tokens.odds.map((odds, step) => `--odds-${step}: ${odds};`).join(' '),
  ].join(' ');

/** Style of the file: its colours are those of all charts, by day, by night and on paper. */
export const FILE_STYLE = `
:root { color-scheme: light; ${colours(LIGHT_TOKENS)} }
@media (prefers-color-scheme: dark) { :root { color-scheme: dark; ${colours(DARK_TOKENS)} } }
* { box-sizing: border-box; }
html { font: 17px/1.5 "Atkinson Hyperlegible Next", Verdana, sans-serif; background: var(--paper); color: var(--ink); }
body { max-width: 42rem; margin: 0 auto; padding: 1rem 1rem 3rem; overflow-wrap: break-word; }
h1, h2, figcaption { font-family: Petrona, Georgia, serif; line-height: 1.25; text-wrap: pretty; }
h1 { margin: 0.8rem 0; font-size: 1.65rem; font-weight: 560; }
h2 { margin: 2.2rem 0 0.5rem; padding-top: 0.8rem; border-top: 2px dashed var(--rule); font-size: 1.24rem; font-weight: 560; }
p, ul, dl, figure { margin: 0.5rem 0; }
ul { padding-left: 1.1rem; }
li + li { margin-top: 0.35rem; }
.small { color: var(--soft-ink); font-size: 0.88rem; }
.tag { display: inline-block; padding: 0.05rem 0.55rem; border: 1.5px solid var(--edge); font-weight: 650; }
.floor { padding: 0.6rem 0.9rem; border: 1.5px solid var(--edge); background: var(--sheet); }
dl { display: grid; gap: 0.5rem; }
dt { color: var(--soft-ink); font-size: 0.88rem; }
dd { margin: 0; }
figure { margin: 1.8rem 0; break-inside: avoid; }
figcaption { font-size: 1.12rem; font-weight: 560; }
figure svg { display: block; max-width: 100%; height: auto; overflow: visible; }
.keys { display: flex; flex-wrap: wrap; gap: 0.1rem 1.1rem; margin-top: 0.2rem; padding: 0; color: var(--soft-ink); font-size: 0.84rem; list-style: none; }
.keys li { display: flex; align-items: center; gap: 0.4rem; margin: 0; }
.keys li::before { width: 1.5rem; border-top: 1.5px solid var(--dry); content: ""; }
.keys .odds::before { border-top: 3px solid var(--ink); }
.keys .middle::before { border-top: 1.5px dotted var(--middle); }
.keys .wet::before { border-top: 1.5px dashed var(--wet); }
.keys .observed::before { width: 0.9rem; height: 0.9rem; border: 0; background: var(--soft-ink); }
.keys .normal::before { width: 0.9rem; height: 0.9rem; border: 1.25px solid var(--edge); }
.wide { display: none; }
@media (min-width: 43rem) {
  .wide { display: block; }
  .narrow { display: none; }
  dl > div { display: grid; grid-template-columns: 14rem minmax(0, 1fr); gap: 1rem; }
}
.room { overflow-x: auto; }
.room:focus-visible { outline: 2px solid var(--accent); }
table { width: 100%; border-collapse: collapse; font-size: 0.88rem; font-variant-numeric: tabular-nums; }
caption { padding-bottom: 0.4rem; text-align: left; }
th, td { padding: 0.25rem 0.5rem 0.25rem 0; border-bottom: 1px solid var(--rule); text-align: left; vertical-align: top; }
th { font-weight: 500; }
thead th { color: var(--soft-ink); }
.number { text-align: right; }
@media print {
  :root { color-scheme: light; ${colours(LIGHT_TOKENS)} --paper: #fff; --sheet: #fff; }
  html { font-size: 12.5px; }
  body { max-width: none; padding: 0; }
  .wide { display: block; }
  .narrow { display: none; }
  .room { overflow: visible; }
  tr, li, dl > div { break-inside: avoid; }
  h2 { break-after: avoid; }
}
`;
