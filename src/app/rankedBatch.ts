import type { Batch, BatchAnswer, BatchRow } from '../schema/batch.ts';
import type { AskedRow, FieldList } from './askedRows.ts';
import { modelOf } from './modelOf.ts';
import { misspeltColumns, strangeColumns } from './strangeColumns.ts';

/** A list with its answers, which come in the order of the rows, ranked by odds times area. */
export function rankedBatch(
  list: FieldList,
  rows: readonly AskedRow[],
  answers: readonly BatchAnswer[],
  version: string,
): Batch {
  const unranked = rows.map(({ line, given, areaHectares }, index): Omit<BatchRow, 'rank'> => {
    const { answer, problem } = answers[index];
    const odds = answer?.oddsAtPlanting ?? null;
    const hectaresAtRisk = odds === null || areaHectares === null ? null : odds * areaHectares;
    return { line, areaHectares, hectaresAtRisk, given, answer, problem };
  });
  const ranked = unranked
    .sort(byRisk)
    .map(({ line, ...row }, index): BatchRow => ({ line, rank: index + 1, ...row }));
  const answered = answers.filter(({ answer }) => answer !== null).length;
  return {
    file: list.file,
    answered,
    refused: answers.length - answered,
    unknownColumns: strangeColumns(list.columns),
    cautions: [
      ...misspeltColumns(list.columns),
      'The label is the law and the floor; intervals that are not your own entry are for planning only.',
      'Odds are a model’s estimate from past weather, not a promise. Ask for a field by itself for its reasons and cautions.',
    ],
    model: modelOf(version),
    rows: ranked,
  };
}

/** Most area at risk first, then rows without an area by odds, then those without odds, then refused ones; by line. */
function byRisk(one: Omit<BatchRow, 'rank'>, other: Omit<BatchRow, 'rank'>): number {
  const kind = ({ answer, hectaresAtRisk }: Omit<BatchRow, 'rank'>) =>
    hectaresAtRisk !== null ? 0 : answer === null ? 3 : answer.oddsAtPlanting === null ? 2 : 1;
  const size = ({ answer, hectaresAtRisk }: Omit<BatchRow, 'rank'>) =>
    hectaresAtRisk ?? answer?.oddsAtPlanting ?? 0;
  return kind(one) - kind(other) || size(other) - size(one) || one.line - other.line;
}
