import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { DrywakeError } from '../errors.ts';
import type { BatchAnswer } from '../schema/batch.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import { type AskedQuestion, questionSchema } from '../schema/question.ts';
import { type AnswerDeps, answerField } from './answerField.ts';
import { judgePair } from './pairAnswers.ts';
import { readQuestion } from './readQuestion.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { NEUTRAL } from './say.ts';
import { observedThrough } from './seasonQuestionOf.ts';
import { forbids, settleConditions } from './settleConditions.ts';
import type { SharedSeasons } from './sharedSeasons.ts';
import type { StationWeather } from './stationWeather.ts';
import { speciesOf, storedLabel, treatmentOf, withResidual } from './treatment.ts';
import { sayOdds } from './words.ts';

/** What a row's answer needs beside its question. */
export interface BatchAnswerDeps extends Pick<AnswerDeps, 'catalogue' | 'climates' | 'labels'> {
  /** Seasons of the rows before. */
  readonly seasons: SharedSeasons;
}

type Answered = NonNullable<BatchAnswer['answer']>;

/**
 * The figures of one field without its reasons, curves and cautions: the same as the whole answer gives, in a fraction of
 * its time. A mix of crops, a product of several actives, and a field treated more than once go the long way. What cannot be
 * answered comes back as a problem.
 */
export async function batchAnswer(input: AskedQuestion, deps: BatchAnswerDeps): Promise<BatchAnswer> {
  try {
    const stored = await storedLabel(input, deps.labels);
    const question = readQuestion(questionSchema, withResidual(input, stored));
    const { catalogue, climates } = deps;
    const isPlain =
      speciesOf(question.crop).length === 1 &&
      question.otherTreatments.length === 0 &&
      (stored === null || stored.entry.actives.length === 1);
    if (!isPlain) return { answer: await wholeAnswerOf(input, deps), problem: null };
    const weather = await climates.of(question);
    const { resolved } = treatmentOf(question, stored?.entry ?? null, catalogue);
    return {
      answer: answerOf(conditioned(resolved, weather, catalogue), weather, deps.seasons),
      problem: null,
    };
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    const { code, message, hint, details } = error;
    return { answer: null, problem: { code, message, hint, details } };
  }
}

/** The question with what its label's conditions leave; those that only stand beside it change no figure. */
const conditioned = (
  resolved: ResolvedQuestion,
  weather: StationWeather,
  catalogue: Catalogue,
): ResolvedQuestion =>
  resolved.lines.some(({ setsDate }) => setsDate)
    ? settleConditions(resolved, weather, catalogue).resolved
    : resolved;

function answerOf(resolved: ResolvedQuestion, weather: StationWeather, seasons: SharedSeasons): Answered {
  const { interval, plantDay, application, question, labelForbids } = resolved;
  observedThrough(question.asOf, application.appliedDay, weather.climate.series);
  const { set, known } = seasons.of([resolved], weather.climate, plantDay);
  const { season, labelDate } = judgePair(resolved, set, weather, known);
  const label = { labelDate, interval: interval.text, intervalConfirmed: interval.confirmed };
  const labelAllows = labelDate <= question.plantOn && !labelForbids;
  if (season === null) {
    return {
      ...label,
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
    ...label,
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

/** By the whole answer, which judges every species, active and treatment. */
async function wholeAnswerOf(
  input: AskedQuestion,
  { catalogue, climates, labels }: BatchAnswerDeps,
): Promise<Answered> {
  const whole = await answerField(input, {
    catalogue,
    climates,
    labels,
    version: '',
    wording: NEUTRAL.wording,
  });
  const { oddsAtPlanting, oddsRange, labelDate, clearDate, inputs } = whole;
  const { plantOn, oddsLimit } = inputs.question;
  const labelAllows = labelDate <= plantOn && !whole.conditions.some(forbids);
  return {
    oddsAtPlanting,
    oddsLow: oddsRange?.low ?? null,
    oddsHigh: oddsRange?.high ?? null,
    years: oddsRange?.years ?? null,
    oddsInWords: oddsAtPlanting === null ? 'no carryover is modelled' : sayOdds(oddsAtPlanting),
    labelDate,
    clearDate,
    daysAfterLabel: clearDate === null ? null : parseIsoDate(clearDate) - parseIsoDate(labelDate),
    oddsAtLabelDate: whole.oddsAtLabelDate,
    withinLimit: labelAllows && (oddsAtPlanting ?? 0) <= oddsLimit,
    interval: inputs.interval.text,
    intervalConfirmed: inputs.interval.confirmed,
  };
}
