import { DrywakeError } from '../errors.ts';
import type { FieldAnswer } from '../schema/fieldAnswer.ts';
import type { FieldRecord } from '../schema/fieldRecord.ts';
import type { StationExtent } from '../schema/weather.ts';
import { type AnswerDeps, answerField } from './answerField.ts';
import { fieldQuestion } from './fieldQuestion.ts';
import { modelOf } from './modelOf.ts';

/** Answers every planned crop of a field; where one has no answer, it carries the reason. */
export async function fieldAnswers(
  record: FieldRecord,
  stations: readonly StationExtent[],
  deps: AnswerDeps,
): Promise<FieldAnswer[]> {
  const station = stations.find(({ id }) => id === record.station) ?? null;
  const answers: FieldAnswer[] = [];
  for (const plan of record.plans) {
    const answer: FieldAnswer = {
      planId: plan.id,
      question: null,
      sentence: null,
      labelDate: null,
      clearDate: null,
      oddsAtPlanting: null,
      oddsRange: null,
      conditions: [],
      model: modelOf(deps.version),
    };
    try {
      answer.question = fieldQuestion(record, plan, station);
      const { sentence, labelDate, clearDate, oddsAtPlanting, oddsRange, conditions } = await answerField(
        answer.question as Parameters<typeof answerField>[0],
        deps,
      );
      Object.assign(answer, { sentence, labelDate, clearDate, oddsAtPlanting, oddsRange, conditions });
    } catch (error) {
      if (!(error instanceof DrywakeError)) throw error;
      const { code, message, details, hint } = error;
      answer.problem = { code, message, details, hint };
    }
    answers.push(answer);
  }
  return answers;
}
