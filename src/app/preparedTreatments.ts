import { InvalidInputError } from '../errors.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import { type AskedQuestion, type Question, questionSchema } from '../schema/question.ts';
import type { AnswerDeps } from './answerField.ts';
import type { StationWeather } from './climateCache.ts';
import { refuseUnknownSums } from './fieldTreatments.ts';
import { readQuestion } from './readQuestion.ts';
import { speciesOf, storedLabel, type Treatment, treatmentOf, withResidual } from './treatment.ts';
import { withConditions } from './withConditions.ts';

/** A question looked up: its weather, its label entry, and the treatment before each species of the crop. */
export interface PreparedQuestion {
  readonly question: Question;
  readonly stored: StoredLabel | null;
  readonly weather: StationWeather;
  /** One for each species; the field's other treatments stand beside it. */
  readonly treatments: readonly Treatment[];
}

interface OtherQuestion {
  readonly question: Question;
  readonly stored: StoredLabel | null;
}

/** Reads a question and looks up all that its answer hangs on. @throws as {@link answerField} */
export async function preparedTreatments(input: AskedQuestion, deps: AnswerDeps): Promise<PreparedQuestion> {
  const stored = await storedLabel(input, deps.labels);
  const question = readQuestion(questionSchema, withResidual(input, stored));
  const others = await Promise.all(
    question.otherTreatments.map((given, index) => otherQuestion(question, given, index, deps)),
  );
  const species = speciesOf(question.crop);
  const asked = species.map((crop) => ({
    main: treatmentOf({ ...question, crop }, stored?.entry ?? null, deps.catalogue),
    beside: others.map((other) =>
      treatmentOf({ ...other.question, crop }, other.stored?.entry ?? null, deps.catalogue),
    ),
  }));
  for (const { main, beside } of asked) {
    refuseUnknownSums([main, ...beside].flatMap(({ actives }) => actives));
  }
  const weather = await deps.climates.of(question);
  const conditioned = (one: ReturnType<typeof treatmentOf>): Treatment => ({
    ...one,
    ...withConditions(one.resolved, weather, deps.catalogue),
  });
  const treatments = asked.map(({ main, beside }): Treatment => {
    const treatment = conditioned(main);
    return { ...treatment, resolved: { ...treatment.resolved, beside: beside.map(conditioned) } };
  });
  return { question, stored, weather, treatments };
}

/** Another treatment as a question of its own: same field, crop and date. */
async function otherQuestion(
  question: Question,
  given: Question['otherTreatments'][number],
  index: number,
  { labels }: AnswerDeps,
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
