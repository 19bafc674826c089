import type { Application } from '../analysis/applications.ts';
import { type SeasonOdds, seasonOdds } from '../analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { isoDateOf } from '../calendar.ts';
import { InvalidInputError } from '../errors.ts';
import { phFactor } from '../model/breakdown/phFactor.ts';
import { treatmentLoad } from '../model/deposit/soilLoad.ts';
import type { Alternatives } from '../schema/alternatives.ts';
import { comparisonQuestionSchema, cropGridQuestionSchema } from '../schema/comparison.ts';
import type { Question } from '../schema/question.ts';
import type { AnswerDeps } from './answerField.ts';
import type { StationWeather } from './climateCache.ts';
import { compareResiduals } from './compareResiduals.ts';
import { cropByDate } from './cropByDate.ts';
import { carryingApplications, fieldLabelDay, mainApplications } from './fieldTreatments.ts';
import { preparedTreatments } from './preparedTreatments.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';
import type { AskedQuestion } from './treatment.ts';

/** Overlaps that are looked at: none, half a pass, a whole one. */
const OVERLAPS = [1, 1.5, 2];
/** Zones of soil pH that are looked at. */
const PH_ZONES = [5.5, 6, 6.5, 7, 7.5, 8, 8.5];

/**
 * What else could be done, in one call: other crops on that date, a date for this crop, residuals that would have done,
 * and what overlap and soil pH change. Crops and residuals are judged without the field's evidence.
 *
 * @throws as {@link answerField}
 * @example (await alternatives({ ...demoQuestion, evidence: [] }, deps)).asAsked.labelDate // '2026-12-14'
 */
export async function alternatives(input: AskedQuestion, deps: AnswerDeps): Promise<Alternatives> {
  const { treatments, weather } = await preparedTreatments(input, deps);
  if (treatments.length > 1) {
    throw new InvalidInputError(
      'CROP_MIX',
      'Alternatives are looked for before one crop, not before a mix.',
      {
        hint: 'Name one of its species; the most restricted one rules the mix.',
        details: { field: 'crop' },
      },
    );
  }
  const [{ resolved }] = treatments;
  const { question, active, crop } = resolved;
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
  const { plantDay, question } = resolved;
  const labelDay = fieldLabelDay(resolved);
  const labelDate = isoDateOf(labelDay);
  const main = mainApplications(resolved);
  if (carryingApplications(resolved).length === 0) {
    const waitDays = Math.max(0, labelDay - plantDay);
    return {
      asAsked: { labelDate, clearDate: labelDate, waitDays, oddsAtPlanting: null },
      overlap: [],
      soilPh: [],
    };
  }
  const asked = seasonQuestionOf(resolved, climate.series);
  // Evidence tells of the soil it was taken from, whatever overlap or pH is looked at.
  const oddsWith = (change: (one: Application, index: number) => Application) =>
    seasonOdds(climate, {
      ...asked,
      applications: asked.applications.map((one, index) => (index < main ? change(one, index) : one)),
      sampled: asked.applications,
    } satisfies SeasonQuestion);
  const told = (odds: SeasonOdds) => ({
    oddsAtPlanting: odds.oddsAtPlanting,
    clearDate: odds.clearOffset === null ? null : isoDateOf(odds.firstDay + odds.clearOffset),
  });
  // Overlap doubles every active of a product; pH acts on the one whose response is known.
  const withLoad = (load: number) => oddsWith((one) => ({ ...one, load }));
  const plain = seasonOdds(climate, asked);
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
      ...told(oddsWith((one, index) => (index === 0 ? { ...one, siteFactor: halfLifeFactor } : one))),
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
    ...(question.otherTreatments.length > 0
      ? [
          'Other treatments of the field count for the crop, overlap and pH asked about, not for other crops and residuals.',
        ]
      : []),
    ...(question.evidence.length > 0
      ? ['Field evidence counts for the crop, overlap and pH asked about, not for other crops and residuals.']
      : []),
  ];
}
