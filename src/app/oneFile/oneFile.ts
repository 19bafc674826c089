import type { Answer } from '../../schema/answer.ts';
import type { FieldRecord } from '../../schema/fieldRecord.ts';
import type { AskedQuestion } from '../../schema/question.ts';
import { type AnswerDeps, answerField } from '../answerField.ts';
import { sayIn } from '../say.ts';
import { sheetOf } from '../sheet.ts';
import { figuresOf } from './figures.ts';
import { filePage } from './page.ts';

/** How a file is written. */
export interface OneFileOptions {
  /** When it is made, ISO 8601 in UTC. */
  readonly madeAt: string;
  /** The kept field that it is about; null where the question stands by itself. */
  readonly field: Pick<FieldRecord, 'farm' | 'name' | 'areaHa'> | null;
}

/** An answer as a file of its own. */
export interface OneFile {
  /** Telling name, ending in .html. */
  readonly name: string;
  readonly html: string;
}

/**
 * An answer as one HTML file that opens anywhere: no server, no script, nothing fetched. It leaves the house as a sheet
 * does, and so follows the same rule.
 *
 * @throws {InvalidInputError} SHEET_UNCONFIRMED while an interval rests on the catalogue; and what {@link answerField}
 *   throws
 * @example (await oneFile({ ...demoQuestion, interval: '4 months' }, deps, { madeAt: '2026-09-30T12:00:00Z', field: null })).name // 'drywake-invented-flumioxazin-lentil-2026-08-14.html'
 */
export async function oneFile(
  input: AskedQuestion,
  deps: AnswerDeps,
  { madeAt, field }: OneFileOptions,
): Promise<OneFile> {
  const say = sayIn(deps.wording);
  const answer = await answerField(input, deps, { season: true });
  const sheet = sheetOf(answer, say, field);
  const figures = await figuresOf(answer, say);
  return { name: nameOf(answer), html: await filePage({ answer, sheet, figures, say, madeAt }) };
}

function nameOf({ inputs, weather }: Answer): string {
  const { crop, residual, question } = inputs;
  const parts = ['drywake', ...(weather.station.invented ? ['invented'] : []), residual.name, crop];
  return `${[...parts, question.appliedOn].join('-').replaceAll(/[^\w.-]+/g, '-')}.html`;
}
