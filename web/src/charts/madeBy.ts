import { version } from '../../../package.json';
import { today } from '../fields/nextPlan.ts';
import type { Column } from './csv.ts';

/** What every file that the page hands out says of itself. */
export interface Made {
  /** Program, version and day: "Drywake 0.1.0, 2026-11-25". */
  readonly by: string;
  /** What was asked, as the page's own address: behind that of any server it asks the same again. */
  readonly asked: string;
}

/** By what, when and for which question a file is made now. */
export const madeNow = (): Made => ({
  by: `Drywake ${version}, ${today()}`,
  asked: `${location.pathname}${location.search}`,
});

/** The same as the last columns of a table, on every row: a row keeps it when it is sorted or put under others. */
export const withMade = <Row>(columns: readonly Column<Row>[], { by, asked }: Made): Column<Row>[] => [
  ...columns,
  { head: 'Made by', cell: () => by },
  { head: 'Asked', cell: () => asked },
];

/** The same inside a drawing, where nothing of it is drawn. */
export function svgWithMade(svg: string, about: string, { by, asked }: Made): string {
  const words = [about, `Made by ${by}.`, `Asked: ${asked}`].map(escaped).join('\n');
  return svg.replace(/<svg\b[^>]*>/, (tag) => `${tag}<metadata>${words}</metadata>`);
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
