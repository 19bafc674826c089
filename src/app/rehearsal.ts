import { isoDateOf, parseIsoDate } from '../calendar.ts';
import type { QuestionInput } from '../schema/question.ts';
import { type AnswerDeps, answerField } from './answerField.ts';
import { compareResiduals } from './compareResiduals.ts';
import { cropByDate } from './cropByDate.ts';
import type { FieldsDesk } from './fieldsDesk.ts';

/** Times that each kind of question is answered: once reads the code, a few times more make it fast. */
const ROUNDS = 3;
/** Between the planting dates of two rounds, and between two columns of the grid. [d] */
const STEP_DAYS = 7;
/** Columns of the grid. */
const WEEKS = 8;
/** Most fields whose stations are worked out beforehand: more would take the room of stations that are asked about. */
const MOST_FIELDS = 12;

/** A piece of work that may be left out at any time. */
export type Piece = () => Promise<unknown>;

/**
 * Pieces of work after which a program's first answers come as fast as later ones: one question of each kind, a few
 * times over, then the fields that are kept, if they are few, so that the weather of their stations is at hand.
 * Nothing is changed, and what comes of it is thrown away.
 */
export function rehearsal(
  question: QuestionInput,
  deps: AnswerDeps,
  desk: Pick<FieldsDesk, 'fields' | 'answers'>,
): Piece[] {
  const rounds = Array.from({ length: ROUNDS }, (_, round) => {
    const plantOn = later(question.plantOn, round * STEP_DAYS);
    return roundOf({ ...question, plantOn }, deps);
  });
  const fields = Array.from({ length: MOST_FIELDS }, (_, index) => () => answersOf(index, desk));
  return [...rounds.flat(), ...fields];
}

const later = (isoDate: string, days: number): string => isoDateOf(parseIsoDate(isoDate) + days);

function roundOf(question: QuestionInput, deps: AnswerDeps): Piece[] {
  const { residual, crop: _crop, plantOn, ...season } = question;
  const dates = { plantFrom: plantOn, plantTo: later(plantOn, WEEKS * STEP_DAYS), stepDays: STEP_DAYS };
  return [
    async () => JSON.stringify(await answerField(question, deps, { season: true })),
    async () => JSON.stringify(await compareResiduals({ ...season, crop: question.crop, plantOn }, deps)),
    async () => JSON.stringify(await cropByDate({ ...season, residual, ...dates }, deps)),
  ];
}

/** The answers of one field, where there are few of them. */
async function answersOf(index: number, { fields, answers }: Pick<FieldsDesk, 'fields' | 'answers'>) {
  if ((await fields.count()) > MOST_FIELDS) return;
  const field = (await fields.list()).kept[index];
  if (field !== undefined) await answers(field.record.id);
}
