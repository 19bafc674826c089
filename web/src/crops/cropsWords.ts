import { oddsWord, sayOdds } from '../answer/oddsInWords.ts';
import type { CropGrid, CropRow, QuestionInput, StationExtent } from '../api/contract.ts';
import { QUESTION_DEFAULTS } from '../question/defaults.ts';
import { sayOddsLimit } from '../question/questionInWords.ts';
import type { DateWords } from '../units/dates.ts';
import { theyAre } from '../words/theyAre.ts';
import type { Years } from './cropsAddress.ts';
import { cellOf, type GridColumn } from './gridView.ts';

export const YEARS_WORDS: Record<Years, string> = {
  dry: 'in dry years',
  all: 'over all years',
  wet: 'in wet years',
};

/** Whether label and limit both allow a crop in a column. */
export function fits(row: CropRow, column: GridColumn, years: Years, limit: number): boolean {
  const cell = cellOf(row, column, years);
  return cell.kind === 'free' || (cell.kind === 'odds' && cell.odds <= limit);
}

/** What the grid comes to: how many crops fit, then which, and how it stands with the crop asked about. */
export interface CropsFinding {
  readonly head: string;
  readonly rest: string;
}

/** What the grid comes to on one of its dates, and for the crop that was asked about. */
export function cropsFinding(
  { residual, crops, question }: CropGrid,
  column: GridColumn,
  own: string,
  years: Years,
  dates: DateWords,
): CropsFinding {
  if (crops.length === 0) return { head: `No crop can be judged after ${residual}.`, rest: '' };
  const limit = question.oddsLimit;
  const names = crops.filter((row) => fits(row, column, years, limit)).map(({ crop }) => crop);
  const where = years === 'all' ? '' : ` ${YEARS_WORDS[years]}`;
  const head = `After ${residual} sprayed ${dates.full(question.appliedOn)}, ${names.length} of ${crops.length} crops fit on ${dates.full(column.date)}${where}, by label and by your limit of ${sayOddsLimit(limit)}.`;
  const row = crops.find(({ crop }) => crop === own);
  const which = names.length === 0 ? [] : [theyAre(names)];
  const ours = row === undefined ? [] : [capital(`${ownWords(row, column, years, limit, dates)}.`)];
  return { head, rest: [...which, ...ours].join(' ') };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Until when the label keeps a crop out, or why. */
const barredWords = ({ labelForbids, labelDate }: CropRow, dates: DateWords): string =>
  labelForbids === true ? 'while one of its conditions is not met' : `until ${dates.full(labelDate)}`;

function ownWords(row: CropRow, column: GridColumn, years: Years, limit: number, dates: DateWords): string {
  const cell = cellOf(row, column, years);
  if (cell.kind === 'barred') return `the label bars ${row.crop} ${barredWords(row, dates)}`;
  if (cell.kind === 'free') return `for ${row.crop} no carryover is reckoned`;
  return `${row.crop} ${cell.odds <= limit ? 'is one of them' : 'is not among them'}, ${sayOdds(cell.odds)}`;
}

/** A cell in full, for the line under the grid. */
export function cellInWords(row: CropRow, column: GridColumn, years: Years, dates: DateWords): string {
  const cell = cellOf(row, column, years);
  const head = `${row.crop} on ${dates.full(column.date)}: `;
  const clear =
    row.clearDate === null
      ? 'no clear date within the search'
      : `clear from ${dates.near(row.clearDate, column.date)}`;
  const label = `label date ${dates.near(row.labelDate, column.date)}`;
  if (cell.kind === 'barred') return `${head}not allowed by the label ${barredWords(row, dates)}; ${clear}.`;
  if (cell.kind === 'free') return `${head}no carryover is reckoned; ${label}.`;
  const more = years === 'all' ? allYearsInWords(row, column.index) : '';
  return `${head}${sayOdds(cell.odds)} ${YEARS_WORDS[years]}, ${oddsWord(cell.odds)}${more}; ${label}, ${clear}.`;
}

/** How far the years leave the odds of a date open, and how they stand in dry and wet ones. */
function allYearsInWords({ oddsRange, dry, wet }: CropRow, index: number): string {
  if (oddsRange === null || dry === null || wet === null) return '';
  const [low, high] = [oddsRange.low[index], oddsRange.high[index]].map((odds) => Math.round(odds * 20));
  const ends = low === high ? `close to ${low} in 20` : `between ${low} and ${high} in 20`;
  return ` (${oddsRange.years[index]} years put it ${ends}; ${sayOdds(dry[index])} in dry years, ${sayOdds(wet[index])} in wet ones)`;
}

/** Crops by the date from which the label allows them; an empty date stands for those that a failed condition keeps out. */
export function byLabelDate(rows: readonly CropRow[]): { labelDate: string; crops: string[] }[] {
  const groups = new Map<string, string[]>();
  for (const { crop, labelForbids, labelDate } of rows) {
    const key = labelForbids === true ? '' : labelDate;
    groups.set(key, [...(groups.get(key) ?? []), crop]);
  }
  return [...groups]
    .map(([labelDate, crops]) => ({ labelDate, crops }))
    .sort((a, b) => (a.labelDate < b.labelDate ? -1 : 1));
}

/** The question as one sentence, for print. */
export function cropsInWords(
  question: QuestionInput,
  stations: readonly StationExtent[],
  dates: DateWords,
): string {
  const station = stations.find(({ id }) => id === question.station)?.name ?? question.station;
  const rate = Math.round((question.rateFraction ?? QUESTION_DEFAULTS.rateFraction) * 100);
  const soil = question.soilClass ? ` on ${question.soilClass}` : '';
  const limit = sayOddsLimit(question.oddsLimit ?? QUESTION_DEFAULTS.oddsLimit);
  return `I sprayed ${question.residual} on ${dates.full(question.appliedOn)} at ${rate} % of the top label rate${soil} near ${station}. Which crops can go in when? I accept ${limit}.`;
}
