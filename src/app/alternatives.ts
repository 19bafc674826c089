import type { Alternatives } from '../schema/alternatives.ts';
import {
  type Comparison,
  comparisonQuestionSchema,
  cropGridQuestionSchema,
  type ResidualRow,
} from '../schema/comparison.ts';
import type { AskedQuestion, Question } from '../schema/question.ts';
import type { AnswerDeps } from './answerField.ts';
import { changedOdds, worstOf } from './changedOdds.ts';
import { compareResiduals } from './compareResiduals.ts';
import { cropByDate } from './cropByDate.ts';
import { asOneMix } from './mixedAnswer.ts';
import { preparedTreatments } from './preparedTreatments.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';

/**
 * What else could be done, in one call: other crops on that date, a date for this crop, residuals that would have done,
 * and what overlap and soil pH change. Of a mix the most restricted species counts in each; a residual would have done
 * where it would have before all of them. Crops and residuals are judged without the field's evidence.
 *
 * @throws as {@link answerField}
 * @example (await alternatives({ ...demoQuestion, evidence: [] }, deps)).asAsked.labelDate // '2026-12-14'
 */
export async function alternatives(input: AskedQuestion, deps: AnswerDeps): Promise<Alternatives> {
  const { question, treatments, weather } = await preparedTreatments(input, deps);
  const species = asOneMix(treatments).map(({ resolved }) => resolved);
  const compared: Comparison[] = [];
  for (const { crop } of species) {
    if (crop === null) continue;
    const asked = { ...fieldsOf(comparisonQuestionSchema.shape, question), crop: crop.name };
    compared.push(await compareResiduals(asked, deps));
  }
  return {
    question,
    residual: species[0].treatmentName,
    crop: species.map(({ cropName }) => cropName).join(' + '),
    ...worstOf(
      species.map((one) => changedOdds(one, weather)),
      question.plantOn,
    ),
    ...(await otherCrops(question, species, deps)),
    otherResiduals:
      compared.length < species.length
        ? []
        : goodBeforeAll(compared.map(({ residuals }) => residuals)).filter(
            (row) => !isAsked(row, species[0]),
          ),
    activation: compared[0]?.activation ?? null,
    notes: [...new Set(species.flatMap(notesOf))],
  };
}

/** Whether a row is the treatment asked about. */
const isAsked = ({ labelEntry, residual }: ResidualRow, { question, active }: ResolvedQuestion): boolean =>
  question.labelEntry === undefined
    ? labelEntry === null && residual === active?.isoName
    : labelEntry?.id === question.labelEntry;

/** The residuals that label and limit allow before every species, each with the worst of its odds and dates. */
function goodBeforeAll(tables: readonly (readonly ResidualRow[])[]): ResidualRow[] {
  const keyOf = ({ labelEntry, residual }: ResidualRow) => labelEntry?.id ?? residual;
  const [first, ...more] = tables.map((rows) => rows.filter(({ withinLimit }) => withinLimit));
  return first.flatMap((row) => {
    const same = more.map((rows) => rows.find((other) => keyOf(other) === keyOf(row)));
    if (same.includes(undefined)) return [];
    return [same.reduce<ResidualRow>((worst, next) => (next && isWorse(next, worst) ? next : worst), row)];
  });
}

const isWorse = (one: ResidualRow, other: ResidualRow): boolean =>
  (one.oddsAtPlanting ?? 0) - (other.oddsAtPlanting ?? 0) > 0 ||
  (one.oddsAtPlanting === other.oddsAtPlanting && one.labelDate > other.labelDate);

/** The fields of a question that another one shares. */
function fieldsOf<Shape extends object>(
  shape: Shape,
  question: Question,
): Pick<Question, keyof Shape & keyof Question> {
  return Object.fromEntries(Object.entries(question).filter(([key]) => key in shape)) as Pick<
    Question,
    keyof Shape & keyof Question
  >;
}

async function otherCrops(
  question: Question,
  species: readonly ResolvedQuestion[],
  deps: AnswerDeps,
): Promise<Pick<Alternatives, 'otherCrops' | 'cropsUnjudged'>> {
  const [{ active, beside }] = species;
  const isUnknown = active === null && question.labelEntry === undefined;
  if (isUnknown || beside.some(({ resolved }) => resolved.active === null)) {
    return { otherCrops: [], cropsUnjudged: [] };
  }
  const { crops, unjudged } = await cropByDate(
    {
      ...fieldsOf(cropGridQuestionSchema.shape, question),
      plantFrom: question.plantOn,
      plantTo: question.plantOn,
    },
    deps,
  );
  const rows = crops
    .filter((row) => species.every(({ cropName }) => row.crop !== cropName))
    .map(({ odds, dry: _dry, wet: _wet, ...row }) => {
      const oddsAtPlanting = odds?.[0] ?? null;
      const withinLimit =
        row.labelForbids !== true &&
        row.labelDate <= question.plantOn &&
        (oddsAtPlanting ?? 0) <= question.oddsLimit;
      return { ...row, oddsAtPlanting, withinLimit };
    });
  return {
    otherCrops: rows.sort((a, b) => Number(b.withinLimit) - Number(a.withinLimit)),
    cropsUnjudged: unjudged,
  };
}

function notesOf({ active, crop, question, halfLife, beside }: ResolvedQuestion): string[] {
  const ph = active?.ph ?? null;
  return [
    ...(active === null
      ? [`${question.residual} is not in the catalogue, so its intervals before other crops are not known.`]
      : []),
    ...beside
      .filter(({ resolved }) => resolved.active === null)
      .map(
        ({ resolved }) =>
          `${resolved.treatmentName}, also sprayed, is not in the catalogue, so other crops cannot be judged.`,
      ),
    ...(crop === null
      ? [`${question.crop} is not in the catalogue, so other residuals before it are not known.`]
      : []),
    ...(halfLife.halfLifeDays === null
      ? ['No half-life is known, so what overlap changes cannot be reckoned.']
      : []),
    ...(ph === null
      ? ['Nothing is held on what soil pH does to this residual.']
      : ph.kind === 'direction'
        ? [`Only the direction of soil pH is known, not its size: ${ph.words}.`]
        : []),
    ...(question.otherTreatments.some(({ interval }) => interval !== undefined)
      ? [
          'An interval given for another treatment belongs to the crop asked about; before other crops the catalogue’s or your label entry’s counts.',
        ]
      : []),
    ...(question.evidence.length > 0
      ? ['Field evidence counts for the crop, overlap and pH asked about, not for other crops and residuals.']
      : []),
  ];
}
