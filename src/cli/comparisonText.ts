import { sayLimit } from '../app/words.ts';
import { type DateStyle, datesIn } from '../dateWords.ts';
import type { Comparison, ResidualRow } from '../schema/comparison.ts';
import { wrap } from './answerText.ts';
import { modelLine } from './modelLine.ts';
import { textTable } from './textTable.ts';

/** The printed comparison: a table, what activates, what cannot be judged, cautions. */
export function comparisonText(
  { question, crop, residuals, activation, unjudged, cautions, model }: Comparison,
  dateStyle: DateStyle = 'us',
): string {
  const dates = datesIn(dateStyle);
  const head = `Residuals sprayed ${dates.full(question.appliedOn)} before ${crop} planted ${dates.full(question.plantOn)}, odds limit ${sayLimit(question.oddsLimit)}.`;
  return [
    wrap(head),
    '',
    residuals.length === 0
      ? 'No residual has an interval before this crop here.\n'
      : textTable([
          ['', 'odds', 'dry third', 'weeks of control', 'label date', 'clear date', 'interval'],
          ...residuals.map(rowCells),
        ]),
    '* label and odds limit both allow the date',
    ...(activation
      ? [
          wrap(
            `Rain puts a soil residual to work within ${activation.withinDays} days in ${percent(activation.odds)} of years (${percent(activation.low)} to ${percent(activation.high)}).`,
          ),
        ]
      : []),
    ...(unjudged.length > 0
      ? [
          '',
          wrap(
            `Not judged, for want of an interval or a half-life: ${unjudged.map(({ name }) => name).join(', ')}.`,
          ),
        ]
      : []),
    '',
    ...cautions.map((text) => wrap(text, '- ', '  ')),
    '',
    modelLine(model),
    '',
  ].join('\n');
}

function rowCells(row: ResidualRow): string[] {
  const { weeksOfControl: weeks, interval } = row;
  const origin = interval.fromMemory ? ' (from memory)' : '';
  return [
    `${row.withinLimit ? '* ' : '  '}${row.residual}`,
    row.oddsAtPlanting === null ? 'none' : percent(row.oddsAtPlanting),
    row.thirdOdds === null ? '' : percent(row.thirdOdds.dry),
    weeks === null
      ? 'not known'
      : `${weekWords(weeks.middle)} (${weekWords(weeks.wet)}-${weekWords(weeks.dry)})`,
    row.labelDate,
    row.clearDate ?? 'none found',
    `${interval.text}${origin}`,
  ];
}

const weekWords = (weeks: number | null): string => (weeks === null ? '150+' : String(Math.round(weeks)));
export const percent = (odds: number): string => `${Math.round(odds * 100)} %`;
