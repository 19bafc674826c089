import {
  type AnswerChange,
  CHANGE_REASONS,
  type FieldAnswer,
  type LastAnswer,
} from '../schema/fieldAnswer.ts';
import type { FieldPlan } from '../schema/fieldRecord.ts';
import type { Say } from './say.ts';
import { sayBareOdds } from './words.ts';

/** Odds that must have moved by more than this to be worth telling. [0-1] */
const TOLD_MOVE = 0.1;

/** What to remember of an answer. */
export const lastAnswerOf = (answer: FieldAnswer, { crop, plantOn }: FieldPlan, on: string): LastAnswer => ({
  on,
  crop,
  plantOn,
  labelDate: answer.labelDate,
  clearDate: answer.clearDate,
  oddsAtPlanting: answer.oddsAtPlanting,
  conditions: answer.conditions.map(({ name, state }) => ({ name, state })),
});

/**
 * What is worth telling of the way from one answer to the next for the same crop and date; nothing where either has
 * changed, since then it is another question.
 * @param where names field, crop and date in the sentences
 * @param told the answer that the later one was made of, with its conditions in the words asked for
 */
export function answerChanges(
  ids: { readonly fieldId: string; readonly planId: string },
  where: string,
  was: LastAnswer,
  is: LastAnswer,
  told: Pick<FieldAnswer, 'conditions'>,
  { dates }: Say,
): AnswerChange[] {
  if (was.crop !== is.crop || was.plantOn !== is.plantOn) return [];
  const change = (why: AnswerChange['why'], what: string): AnswerChange => ({
    ...ids,
    was,
    is,
    why,
    text: `${where}: ${what}.`,
  });
  const changes: AnswerChange[] = [];
  if (isLate(is) && !isLate(was)) {
    const clear =
      is.clearDate === null
        ? 'no clear date is in sight'
        : `the clear date is now ${dates.full(is.clearDate)}`;
    changes.push(change('clear date past planting', `${clear}, after the planting date`));
  }
  for (const { name, state } of is.conditions) {
    const before = was.conditions.find((one) => one.name === name)?.state;
    if (before === undefined || before === state) continue;
    if (state === 'not met')
      changes.push(change('condition failed', `a label condition has failed (${asks(name, told)})`));
    if (state === 'met')
      changes.push(change('condition newly met', `a label condition is met now (${asks(name, told)})`));
  }
  if (was.oddsAtPlanting !== null && is.oddsAtPlanting !== null && movedBy(was, is) > TOLD_MOVE) {
    const way = is.oddsAtPlanting > was.oddsAtPlanting ? 'risen' : 'fallen';
    const odds = `the odds have ${way} from ${sayBareOdds(was.oddsAtPlanting)} to ${sayBareOdds(is.oddsAtPlanting)}`;
    changes.push(change('odds moved', odds));
  }
  return changes;
}

/** What a condition asks for, in the words asked for. */
function asks(name: string, { conditions }: Pick<FieldAnswer, 'conditions'>): string {
  const { text, state } = conditions.find((one) => one.name === name) ?? { text: name, state: '' };
  return text.split(`: ${state}`)[0];
}

/** Puts the changes in order: by how far the odds moved, then by weight of the reason. */
export const largestFirst = (changes: readonly AnswerChange[]): AnswerChange[] =>
  [...changes].sort(
    (a, b) =>
      movedBy(b.was, b.is) - movedBy(a.was, a.is) ||
      CHANGE_REASONS.indexOf(a.why) - CHANGE_REASONS.indexOf(b.why),
  );

/** Whether there are odds and they are not down to the limit by planting. */
const isLate = ({ oddsAtPlanting, clearDate, plantOn }: LastAnswer): boolean =>
  oddsAtPlanting !== null && (clearDate === null || clearDate > plantOn);

const movedBy = (was: LastAnswer, is: LastAnswer): number =>
  was.oddsAtPlanting === null || is.oddsAtPlanting === null
    ? 0
    : Math.abs(is.oddsAtPlanting - was.oddsAtPlanting);
