import { sayLimit } from '../app/words.ts';
import { type DateStyle, datesIn } from '../dateWords.ts';
import type { CropGrid, CropRow } from '../schema/comparison.ts';
import { wrap } from './answerText.ts';
import { percent } from './comparisonText.ts';
import { modelLine } from './modelLine.ts';
import { textTable } from './textTable.ts';

/** Planting dates that fit on a printed line. */
const DATES_PRINTED = 9;

/** The printed grid: crops down, planting dates across. */
export function cropGridText(
  { question, residual, dates, crops, unjudged, cautions, model }: CropGrid,
  third: 'all' | 'dry' | 'wet',
  dateStyle: DateStyle = 'us',
): string {
  const step = Math.ceil(dates.length / DATES_PRINTED);
  const columns = dates.map((_, index) => index).filter((index) => index % step === 0);
  const which = third === 'all' ? '' : `, ${third} third of the years`;
  return [
    wrap(
      `Crops after ${residual} sprayed ${datesIn(dateStyle).full(question.appliedOn)}${which}: odds by planting date, odds limit ${sayLimit(question.oddsLimit)}.`,
    ),
    '',
    crops.length === 0
      ? 'No crop has an interval after this residual here.\n'
      : textTable([
          ['', 'label date', 'clear date', ...columns.map((index) => dates[index].slice(5))],
          ...crops.map((row) => rowCells(row, dates, columns, third)),
        ]),
    wrap(
      'label = before the label date, or a condition of the label has failed; other columns of the dates are in --json.',
    ),
    ...(unjudged.length > 0
      ? [wrap(`No interval known, read your label: ${unjudged.map(({ name }) => name).join(', ')}.`)]
      : []),
    '',
    ...cautions.map((text) => wrap(text, '- ', '  ')),
    '',
    modelLine(model),
    '',
  ].join('\n');
}

function rowCells(
  row: CropRow,
  dates: readonly string[],
  columns: readonly number[],
  third: 'all' | 'dry' | 'wet',
): string[] {
  const odds = third === 'all' ? row.odds : row[third];
  const cell = (index: number) =>
    row.labelForbids === true || dates[index] < row.labelDate
      ? 'label'
      : odds === null
        ? 'none'
        : percent(odds[index]);
  return [row.crop, row.labelDate, row.clearDate ?? 'none found', ...columns.map(cell)];
}
