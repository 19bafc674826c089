import { twentieths } from '../answer/oddsInWords.ts';
import type { Comparison, ResidualRow, Unjudged } from '../api/contract.ts';
import type { Column } from '../charts/csv.ts';

/** A line of the file: a residual that is judged, or one that is not and why. */
export type FileRow = { readonly row: ResidualRow } | { readonly row: null; readonly unjudged: Unjudged };

export const fileRows = ({ residuals, unjudged }: Comparison): FileRow[] => [
  ...residuals.map((row) => ({ row })),
  ...unjudged.map((one) => ({ row: null, unjudged: one })),
];

type Cell = (row: ResidualRow) => string | number | null | undefined;

const column = (head: string, cell: Cell, number = false): Column<FileRow> => ({
  head,
  number,
  cell: ({ row }) => (row === null ? null : (cell(row) ?? null)),
});

const tenths = (value: number | null | undefined) => value?.toFixed(1);
const inPercent = (odds: number | null | undefined) => (odds == null ? null : (odds * 100).toFixed(1));

/** Everything the table knows, units in the heads; dates stand as YYYY-MM-DD in every file. */
export const FILE_COLUMNS: readonly Column<FileRow>[] = [
  { head: 'Residual', cell: (one) => (one.row === null ? one.unjudged.name : one.row.residual) },
  column('Group', ({ group }) => group),
  column('Label allows', ({ labelAllows }) => (labelAllows ? 'yes' : 'no')),
  column('Within limit', ({ withinLimit }) => (withinLimit ? 'yes' : 'no')),
  column('Odds, in 20', ({ oddsAtPlanting: o }) => (o === null ? 'not reckoned' : twentieths(o)), true),
  column('Odds, %', ({ oddsAtPlanting }) => inPercent(oddsAtPlanting), true),
  column('Odds from, %', ({ oddsRange }) => inPercent(oddsRange?.low), true),
  column('Odds to, %', ({ oddsRange }) => inPercent(oddsRange?.high), true),
  column('Dry third, %', ({ thirdOdds }) => inPercent(thirdOdds?.dry), true),
  column('Wet third, %', ({ thirdOdds }) => inPercent(thirdOdds?.wet), true),
  column('Weeks of control', ({ weeksOfControl: w }) => tenths(w?.middle), true),
  column('Weeks, wet third', ({ weeksOfControl: w }) => tenths(w?.wet), true),
  column('Weeks, dry third', ({ weeksOfControl: w }) => tenths(w?.dry), true),
  column('Label date', ({ labelDate }) => labelDate),
  column('Clear date', ({ clearDate }) => clearDate ?? 'not within the search'),
  column('Interval', ({ interval }) => interval.text),
  column('Interval from', ({ interval }) => (interval.fromMemory ? 'memory' : interval.origin)),
  column('Sources', ({ interval }) => interval.sources.join('; ')),
  { head: 'Not judged because', cell: (one) => (one.row === null ? one.unjudged.reason : null) },
];

/** Beginning of the names of the files. */
export function compareStem({ crop, question }: Comparison): string {
  return ['drywake-residuals-before', crop, question.plantOn].join('-').replaceAll(/[^\w.-]+/g, '-');
}
