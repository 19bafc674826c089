import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { DrywakeError } from '../errors.ts';
import type { BatchAnswer } from '../schema/batch.ts';
import { type Question, type QuestionInput, questionSchema } from '../schema/question.ts';
import { type AnswerDeps, answerField } from './answerField.ts';
import { judgePair, sharedSeason } from './pairAnswers.ts';
import { readQuestion } from './readQuestion.ts';
import { observedThrough } from './seasonQuestionOf.ts';
import { speciesOf, treatmentOf } from './treatment.ts';
import { withConditions } from './withConditions.ts';
import { sayOdds } from './words.ts';

type Answered = NonNullable<BatchAnswer['answer']>;

/**
 * The figures of one field without its reasons, curves and cautions: the same as the whole answer gives, in a fraction of
 * its time. A mix of crops, and a field treated more than once, go the long way. What cannot be answered comes back as a problem.
 */
export async function batchAnswer(
  input: QuestionInput,
  deps: Pick<AnswerDeps, 'catalogue' | 'climates'>,
): Promise<BatchAnswer> {
  try {
    const question = readQuestion(questionSchema, input);
    const isPlain = speciesOf(question.crop).length === 1 && question.otherTreatments.length === 0;
    if (!isPlain) return { answer: await mixOf(question, deps), problem: null };
    const weather = await deps.climates.of(question);
    const { resolved } = treatmentOf(question, null, deps.catalogue);
    const answer = answerOf(withConditions(resolved, weather, deps.catalogue).resolved, weather);
    return { answer, problem: null };
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    const { code, message, hint, details } = error;
    return { answer: null, problem: { code, message, hint, details } };
  }
}

function answerOf(
  resolved: Parameters<typeof judgePair>[0],
  weather: Parameters<typeof judgePair>[2],
): Answered {
  const { interval, plantDay, application, question } = resolved;
  observedThrough(question.asOf, application.appliedDay, weather.climate.series);
  const set = sharedSeason([resolved], weather, plantDay);
  const { season, labelDate } = judgePair(resolved, set, weather, new Map());
  const known = { labelDate, interval: interval.text, intervalConfirmed: interval.confirmed };
  const labelAllows = labelDate <= question.plantOn;
  if (season === null) {
    return {
      ...known,
      oddsAtPlanting: null,
      oddsLow: null,
      oddsHigh: null,
      years: null,
      oddsInWords: 'no carryover is modelled',
      clearDate: labelDate,
      daysAfterLabel: 0,
      oddsAtLabelDate: null,
      withinLimit: labelAllows,
    };
  }
  const answer = season.at(plantDay);
  const { low, high } = answer.range();
  const clear = answer.clearOffset();
  return {
    ...known,
    oddsAtPlanting: answer.oddsAtPlanting,
    oddsLow: low,
    oddsHigh: high,
    years: answer.years,
    oddsInWords: sayOdds(answer.oddsAtPlanting),
    clearDate: clear === null ? null : isoDateOf(application.appliedDay + clear),
    daysAfterLabel: clear === null ? null : clear - season.labelOffset,
    oddsAtLabelDate: answer.oddsAtLabel(),
    withinLimit: labelAllows && answer.oddsAtPlanting <= question.oddsLimit,
  };
}

/** A mix by the whole answer, which judges every species. */
async function mixOf(
  question: Question,
  { catalogue, climates }: Pick<AnswerDeps, 'catalogue' | 'climates'>,
): Promise<Answered> {
  const mix = await answerField(question, { catalogue, climates, version: '' });
  const { oddsAtPlanting, oddsRange, labelDate, clearDate } = mix;
  return {
    oddsAtPlanting,
    oddsLow: oddsRange?.low ?? null,
    oddsHigh: oddsRange?.high ?? null,
    years: oddsRange?.years ?? null,
    oddsInWords: oddsAtPlanting === null ? 'no carryover is modelled' : sayOdds(oddsAtPlanting),
    labelDate,
    clearDate,
    daysAfterLabel: clearDate === null ? null : parseIsoDate(clearDate) - parseIsoDate(labelDate),
    oddsAtLabelDate: mix.oddsAtLabelDate,
    withinLimit: labelDate <= question.plantOn && (oddsAtPlanting ?? 0) <= question.oddsLimit,
    interval: mix.inputs.interval.text,
    intervalConfirmed: mix.inputs.interval.confirmed,
  };
}
