import { InvalidInputError } from '../errors.ts';
import { BATCH_COLUMNS } from '../schema/batchColumns.ts';
import type { AskedQuestion, QuestionInput } from '../schema/question.ts';
import { HECTARES_PER_ACRE } from '../units.ts';
import { misspeltColumns } from './strangeColumns.ts';

/** A list of fields as it stands in a file. */
export interface FieldList {
  readonly file: string;
  readonly columns: readonly string[];
  /** Cells by column; `line` counts from 1, the head included. */
  readonly rows: readonly { readonly line: number; readonly cells: Readonly<Record<string, string>> }[];
}

/** A row of the list as a question; what is wrong in it is told when it is answered. */
export interface AskedRow {
  readonly line: number;
  readonly given: Readonly<Record<string, string>>;
  readonly question: AskedQuestion;
  readonly areaHectares: number | null;
}

/** A list's rows as questions. @param shared fields of the question that hold for rows which do not set them */
export const askedRows = ({ rows }: FieldList, shared: Partial<QuestionInput>): AskedRow[] =>
  rows.map(({ line, cells }) => asked(line, cells, shared));

function asked(
  line: number,
  given: Readonly<Record<string, string>>,
  shared: Partial<QuestionInput>,
): AskedRow {
  const question: Record<string, unknown> = { ...shared };
  for (const { name, field, number } of BATCH_COLUMNS) {
    const text = given[name]?.trim();
    if (field === undefined || !text) continue;
    question[field] = number ? numberOr(text) : text;
  }
  return { line, given, question: question as AskedQuestion, areaHectares: areaOf(given) };
}

/** A number, or the text itself, which the schema then refuses by its name. */
const numberOr = (text: string): number | string => (Number.isFinite(Number(text)) ? Number(text) : text);

function areaOf({ acres, hectares }: Readonly<Record<string, string>>): number | null {
  const number = (text: string | undefined) => (text?.trim() ? Number(text) : Number.NaN);
  const area = hectares?.trim() ? number(hectares) : number(acres) * HECTARES_PER_ACRE;
  return area > 0 && Number.isFinite(area) ? area : null;
}

/**
 * Checks that a list has rows and all needed columns.
 * @throws {InvalidInputError} BATCH_EMPTY, BATCH_COLUMNS
 */
export function assertAskable({ file, columns, rows }: FieldList, shared: Partial<QuestionInput>): void {
  if (rows.length === 0) {
    throw new InvalidInputError('BATCH_EMPTY', `${file} holds no row below its head.`, {
      hint: 'Write one row for each field; "drywake batch --template" prints a head to start from.',
    });
  }
  const given = (name: string, field?: keyof QuestionInput) =>
    columns.includes(name) || (field !== undefined && field in shared);
  // A label entry names its active itself.
  const byLabel = given('label_entry', 'labelEntry');
  const missing = BATCH_COLUMNS.filter(
    ({ name, field, needed }) => needed && !given(name, field) && !(byLabel && field === 'residual'),
  );
  if (missing.length > 0) {
    throw new InvalidInputError(
      'BATCH_COLUMNS',
      `${file} lacks the column${missing.length > 1 ? 's' : ''} ${missing.map(({ name }) => name).join(', ')}.`,
      {
        hint: `${misspeltColumns(columns)
          .map((one) => `${one} `)
          .join(
            '',
          )}Add them, or give one value for all rows by its flag; "drywake batch --template" prints all columns.`,
        details: { missing: missing.map(({ name }) => name) },
      },
    );
  }
}
