import type { BatchRow } from '../schema/batch.ts';
import { BATCH_COLUMNS } from '../schema/batchColumns.ts';
import type { ModelUsed } from '../schema/modelUsed.ts';
import type { QuestionInput } from '../schema/question.ts';
import type { FlatColumn } from './flatTable.ts';
import { madeColumns } from './madeColumns.ts';

type Answer = NonNullable<BatchRow['answer']>;

const answer = (
  name: string,
  type: FlatColumn<BatchRow>['type'],
  field: keyof Answer,
): FlatColumn<BatchRow> => ({ name, type, cell: (row) => row.answer?.[field] ?? null });

const ANSWERS: readonly FlatColumn<BatchRow>[] = [
  { name: 'rank', type: 'whole', cell: ({ rank }) => rank },
  answer('odds_at_planting', 'number', 'oddsAtPlanting'),
  answer('odds_in_words', 'text', 'oddsInWords'),
  answer('odds_low', 'number', 'oddsLow'),
  answer('odds_high', 'number', 'oddsHigh'),
  answer('years', 'whole', 'years'),
  answer('label_date', 'date', 'labelDate'),
  answer('clear_date', 'date', 'clearDate'),
  answer('days_after_label', 'whole', 'daysAfterLabel'),
  answer('odds_at_label_date', 'number', 'oddsAtLabelDate'),
  answer('within_limit', 'truth', 'withinLimit'),
  answer('interval_used', 'text', 'interval'),
  answer('interval_confirmed', 'truth', 'intervalConfirmed'),
  { name: 'hectares_at_risk', type: 'number', cell: ({ hectaresAtRisk }) => hectaresAtRisk },
  {
    name: 'problem',
    type: 'text',
    cell: ({ problem }) => problem && `${problem.message} ${problem.hint}`.trim(),
  },
];

/**
 * Columns of an answered list: its own as they were given, then the answers; a name in use gets a mark of ours.
 * @param shared what was asked of all rows beside what each says itself
 */
export function batchTable(
  columns: readonly string[],
  model: ModelUsed,
  shared: Partial<QuestionInput> = {},
): FlatColumn<BatchRow>[] {
  const taken = new Set(columns);
  const numbers = new Set(BATCH_COLUMNS.filter(({ number }) => number).map(({ name }) => name));
  const given = columns.map((name): FlatColumn<BatchRow> => {
    const cell = (row: BatchRow) => row.given[name] ?? '';
    if (!numbers.has(name)) return { name, type: 'text', cell };
    return { name, type: 'number', cell: (row) => numberOrNull(cell(row)) };
  });
  return [
    ...given,
    ...[...ANSWERS, ...madeColumns<BatchRow>(sharedOf(shared), model)].map((one) =>
      taken.has(one.name) ? { ...one, name: `drywake_${one.name}` } : one,
    ),
  ];
}

/** What holds for all rows as JSON; lists, which may hold a day each, by their length. */
const sharedOf = (shared: Partial<QuestionInput>): string | null =>
  Object.keys(shared).length === 0
    ? null
    : JSON.stringify(shared, (_, value) => (Array.isArray(value) ? `${value.length} entries` : value));

const numberOrNull = (text: string): number | null =>
  text.trim() === '' || !Number.isFinite(Number(text)) ? null : Number(text);
