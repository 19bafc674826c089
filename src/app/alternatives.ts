import { type SeasonOdds, seasonOdds } from '../analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { isoDateOf } from '../calendar.ts';
import { phFactor } from '../model/breakdown/phFactor.ts';
import { treatmentLoad } from '../model/deposit/soilLoad.ts';
import type { Alternatives } from '../schema/alternatives.ts';
import { comparisonQuestionSchema, cropGridQuestionSchema } from '../schema/comparison.ts';
import { type Question, questionSchema } from '../schema/question.ts';
import type { AnswerDeps } from './answerField.ts';
import type { StationWeather } from './climateCache.ts';
import { compareResiduals } from './compareResiduals.ts';
import { cropByDate } from './cropByDate.ts';
import { readQuestion } from './readQuestion.ts';
import { carriesOver, type ResolvedQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';
import { type AskedQuestion, storedLabel, treatmentOf, withResidual } from './treatment.ts';
import { withConditions } from './withConditions.ts';

/** Overlaps that are looked at: none, half a pass, a whole one. */
const OVERLAPS = [1, 1.5, 2];
/** Zones of soil pH that are looked at. */
const PH_ZONES = [5.5, 6, 6.5, 7, 7.5, 8, 8.5];

/**
 * What else could be done, in one call: other crops on that date, a date for this crop, residuals that would have done,
 * and what overlap and soil pH change. Crops and residuals are judged without the field's evidence.
 *
 * @throws as {@link answerField}
 */
export async function alternatives(input: AskedQuestion, deps: AnswerDeps): Promise<Alternatives> {
  const stored = await storedLabel(input, deps.labels);
  const question = readQuestion(questionSchema, withResidual(input, stored));
  const asked = treatmentOf(question, stored?.entry ?? null, deps.catalogue).resolved;
  const weather = await deps.climates.of(question);
  const { resolved } = withConditions(asked, weather, deps.catalogue);
  const { active, crop } = resolved;
  const compared =
    crop === null ? null : await compareResiduals(fieldsOf(comparisonQuestionSchema.shape, question), deps);
  return {
    question,
    residual: resolved.treatmentName,
    crop: crop?.name ?? question.crop,
    ...changesOf(resolved, weather),
    ...(await otherCrops(resolved, deps)),
    otherResiduals: (compared?.residuals ?? []).filter(
      ({ withinLimit, residual }) => withinLimit && residual !== active?.isoName,
    ),
    activation: compared?.activation ?? null,
    notes: notesOf(resolved),
  };
}

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
  { question, crop, active }: ResolvedQuestion,
  deps: AnswerDeps,
): Promise<Pick<Alternatives, 'otherCrops' | 'cropsUnjudged'>> {
  if (active === null) return { otherCrops: [], cropsUnjudged: [] };
  const { crops, unjudged } = await cropByDate(
    {
      ...fieldsOf(cropGridQuestionSchema.shape, question),
      plantFrom: question.plantOn,
      plantTo: question.plantOn,
    },
    deps,
  );
  const rows = crops
    .filter((row) => row.crop !== crop?.name)
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

/** The question as it was asked, with other overlaps, and in other zones of pH. */
function changesOf(
  resolved: ResolvedQuestion,
  { climate }: StationWeather,
): Pick<Alternatives, 'asAsked' | 'overlap' | 'soilPh'> {
  const { application, interval, plantDay, question } = resolved;
  const labelDate = isoDateOf(application.appliedDay + interval.lengthDays);
  if (!carriesOver(resolved)) {
    const waitDays = Math.max(0, application.appliedDay + interval.lengthDays - plantDay);
    return {
      asAsked: { labelDate, clearDate: labelDate, waitDays, oddsAtPlanting: null },
      overlap: [],
      soilPh: [],
    };
  }
  const asked = seasonQuestionOf(resolved, climate.series);
  const [, ...others] = asked.applications;
  const oddsWith = (
    change: Partial<typeof application>,
    ofAll: Pick<typeof application, 'load'> = application,
  ) =>
    seasonOdds(climate, {
      ...asked,
      applications: [
        { ...application, ...change },
        ...others.map((other) => ({ ...other, load: ofAll.load })),
      ],
    } satisfies SeasonQuestion);
  const told = (odds: SeasonOdds) => ({
    oddsAtPlanting: odds.oddsAtPlanting,
    clearDate: odds.clearOffset === null ? null : isoDateOf(odds.firstDay + odds.clearOffset),
  });
  const withLoad = (load: number) => oddsWith({ load }, { load });
  const plain = oddsWith({});
  return {
    asAsked: {
      labelDate,
      ...told(plain),
      waitDays: plain.clearOffset === null ? null : Math.max(0, plain.clearOffset - plain.plantOffset),
    },
    overlap:
      resolved.halfLife.halfLifeDays === null
        ? []
        : OVERLAPS.map((overlapFactor) => ({
            overlapFactor,
            ...told(withLoad(treatmentLoad(question.rateFraction, overlapFactor))),
          })),
    soilPh: phZones(resolved).map(({ soilPh, halfLifeFactor }) => ({
      soilPh,
      halfLifeFactor,
      ...told(oddsWith({ siteFactor: halfLifeFactor })),
    })),
  };
}

function phZones({ active }: ResolvedQuestion): { soilPh: number; halfLifeFactor: number }[] {
  const ph = active?.ph ?? null;
  if (ph === null || ph.kind === 'direction') return [];
  return PH_ZONES.map((soilPh) => ({ soilPh, halfLifeFactor: phFactor(ph, soilPh) }));
}

function notesOf({ active, crop, question, halfLife }: ResolvedQuestion): string[] {
  const ph = active?.ph ?? null;
  return [
    ...(active === null
      ? [`${question.residual} is not in the catalogue, so its intervals before other crops are not known.`]
      : []),
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
    ...(question.evidence.length > 0
      ? ['Field evidence counts for the crop, overlap and pH asked about, not for other crops and residuals.']
      : []),
  ];
}
