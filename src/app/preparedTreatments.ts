import { InvalidInputError } from '../errors.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { LabelEntry, StoredLabel } from '../schema/labelEntry.ts';
import { type AskedQuestion, type Question, questionSchema } from '../schema/question.ts';
import type { AnswerDeps } from './answerField.ts';
import type { FieldPart } from './fieldPart.ts';
import { refuseUnknownSums } from './fieldTreatments.ts';
import { readQuestion } from './readQuestion.ts';
import { type Say, sayIn } from './say.ts';
import type { StationWeather } from './stationWeather.ts';

import {
  type AskedTreatment,
  speciesOf,
  storedLabel,
  type Treatment,
  treatmentOf,
  withResidual,
} from './treatment.ts';

import { withConditions } from './withConditions.ts';

/** A question looked up: its weather, its label entry, and the treatment before each species of the crop. */
export interface PreparedQuestion {
  readonly question: Question;
  readonly stored: StoredLabel | null;
  readonly weather: StationWeather;
  /** One for each species; the field's other treatments stand beside it. */
  readonly treatments: readonly Treatment[];
}

/** Another treatment of the field: same field, crop and date. */
export interface OtherQuestion {
  readonly question: Question;
  readonly stored: StoredLabel | null;
}

/** Reads a question and looks up all that its answer hangs on. @throws as {@link answerField} */
export async function preparedTreatments(
  input: AskedQuestion,
  deps: Pick<AnswerDeps, 'catalogue' | 'climates' | 'labels' | 'wording'>,
): Promise<PreparedQuestion> {
  const say = sayIn(deps.wording);
  const stored = await storedLabel(input, deps.labels);
  const question = readQuestion(questionSchema, withResidual(input, stored));
  const others = await otherQuestions(question, deps.labels);
  const asked = speciesOf(question.crop).map((crop) =>
    withOthers({ ...question, crop }, stored?.entry ?? null, others, deps.catalogue),
  );
  const weather = await deps.climates.of(question);
  return {
    question,
    stored,
    weather,
    treatments: asked.map((one) => conditionedTreatment(one, weather, deps.catalogue, say)),
  };
}

/** A treatment before one crop with the field's other treatments, each looked up. */
export interface TreatmentWithOthers {
  readonly main: AskedTreatment;
  readonly beside: readonly AskedTreatment[];
}

/**
 * Looks a treatment up before one crop, and the field's others with it.
 * @param ofField as {@link treatmentOf} takes it
 * @throws {InvalidInputError} HALF_LIFE_MISSING where a sum cannot be reckoned; and what {@link treatmentOf} throws
 */
export function withOthers(
  question: Question,
  entry: LabelEntry | null,
  others: readonly OtherQuestion[],
  catalogue: Catalogue,
  ofField?: FieldPart,
): TreatmentWithOthers {
  const main = treatmentOf(question, entry, catalogue, ofField);
  const { crop, plantOn } = question;
  const beside = others.map((other) =>
    treatmentOf({ ...other.question, crop, plantOn }, other.stored?.entry ?? null, catalogue),
  );
  refuseUnknownSums([main, ...beside].flatMap(({ actives }) => actives));
  return { main, beside };
}

/** A treatment with what the labels' conditions make of it and of the field's others. */
export function conditionedTreatment(
  { main, beside }: TreatmentWithOthers,
  weather: StationWeather,
  catalogue: Catalogue,
  say: Say,
): Treatment {
  const conditioned = ({
    actives,
    conditionsInWords,
    foodFeedInterval,
    resolved,
  }: AskedTreatment): Treatment =>
    Object.assign(withConditions(resolved, weather, catalogue, say), {
      actives,
      conditionsInWords,
      foodFeedInterval,
    });
  const treatment = conditioned(main);
  if (beside.length === 0) return treatment;
  return { ...treatment, resolved: { ...treatment.resolved, beside: beside.map(conditioned) } };
}

/**
 * The field's other treatments as questions of their own.
 * @throws {InvalidInputError} PLANTING_BEFORE_APPLICATION
 * @throws {MissingDataError} LABEL_UNKNOWN
 */
export const otherQuestions = (question: Question, labels: AnswerDeps['labels']): Promise<OtherQuestion[]> =>
  Promise.all(question.otherTreatments.map((given, index) => otherQuestion(question, given, index, labels)));

/** Another treatment as a question of its own: same field, crop and date. */
async function otherQuestion(
  question: Question,
  given: Question['otherTreatments'][number],
  index: number,
  labels: AnswerDeps['labels'],
): Promise<OtherQuestion> {
  if (given.appliedOn > question.plantOn) {
    throw new InvalidInputError(
      'PLANTING_BEFORE_APPLICATION',
      `The planting date ${question.plantOn} lies before the other treatment on ${given.appliedOn}.`,
      {
        hint: 'Leave out treatments after planting, or give a later planting date.',
        details: { field: `otherTreatments.${index}.appliedOn` },
      },
    );
  }
  const stored = await storedLabel(given, labels);
  const own: Question = {
    ...withoutMain(question),
    ...given,
    residual: given.residual ?? stored?.entry.actives[0].name ?? '',
    otherTreatments: [],
    zones: [],
  };
  return { question: own, stored };
}

/** What a question says of the field and the crop; nothing of its main treatment but what another one overrides. */
const withoutMain = ({
  growthStage: _stage,
  interval: _interval,
  halfLifeDays: _halfLife,
  rateGramsPerHa: _rate,
  labelEntry: _entry,
  ...field
}: Question): Question => field;
