import { activationOdds } from '../analysis/weedControl.ts';
import { yearWeights } from '../analysis/yearWeights.ts';
import { findCrop } from '../catalogue/findCrop.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import {
  type Comparison,
  type ComparisonInput,
  comparisonQuestionSchema,
  type ResidualRow,
} from '../schema/comparison.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import type { Question } from '../schema/question.ts';
import type { AnswerDeps } from './answerField.ts';
import { sharedCautions } from './comparisonCautions.ts';
import { modelOf } from './modelOf.ts';
import { isUnjudged, judgedOrTold, judgePair, NOTHING_FOUND, type Pair, resolveAll } from './pairAnswers.ts';
import { otherQuestions } from './preparedTreatments.ts';
import { readQuestion } from './readQuestion.ts';
import { residualRow } from './residualRow.ts';
import { cropName, lineFor } from './resolveEntered.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';
import { type SeasonInCommon, sharedSeasons } from './sharedSeasons.ts';
import type { StationWeather } from './stationWeather.ts';

/**
 * Every residual of the catalogue and every product of the user's own label entries before one crop on one date:
 * carryover odds against weeks of weed control. A product of one active takes the place of the catalogue's row of it.
 * Rate, overlap and leaves are taken the same for all, each as a share of its own top label rate; the field's other
 * treatments stand beside each.
 *
 * @throws {InvalidInputError} CROP_UNKNOWN and what {@link answerField} throws about dates, soil and weather
 * @example (await compareResiduals({ station: 'demo-invented', crop: 'lentil', appliedOn: '2026-08-14', plantOn: '2027-05-10' }, deps)).crop // 'lentil'
 */
export async function compareResiduals(input: ComparisonInput, deps: AnswerDeps): Promise<Comparison> {
  const question = readQuestion(comparisonQuestionSchema, input);
  const { catalogue } = deps;
  const model = modelOf(deps.version);
  const entries = (await deps.labels?.labels()) ?? [];
  const crop = cropNamed(question.crop, entries, catalogue);
  const asked: Question = { ...question, ...NOTHING_FOUND, crop, residual: '' };
  const weather = await deps.climates.of(asked);
  const others = await otherQuestions(asked, deps.labels);
  const { resolved, unjudged } = resolveAll(
    pairsBefore(asked, entries, catalogue),
    others,
    weather,
    catalogue,
  );
  const cautions = sharedCautions(weather, others.length);
  if (resolved.length === 0)
    return { question, crop, activation: null, residuals: [], unjudged, cautions, model };
  const questions = resolved.map((one) => one.resolved);
  const [lead] = questions;
  const season = (deps.seasons ?? sharedSeasons()).of(questions, weather.climate, lead.plantDay);
  const rows = resolved.map(({ pair, resolved: one }) =>
    judgedOrTold(pair.name, () =>
      residualRow(pair.entry, judgePair(one, season.set, weather, season.known), season, catalogue),
    ),
  );
  return {
    question,
    crop,
    activation: activationOf(lead, season, weather),
    residuals: rows.filter((row): row is ResidualRow => !isUnjudged(row)).sort(byUse),
    unjudged: [...unjudged, ...rows.filter(isUnjudged)],
    cautions,
    model,
  };
}

/** The catalogue's name of a crop, or the user's own where a label entry has a line for it. */
function cropNamed(name: string, entries: readonly StoredLabel[], catalogue: Catalogue): string {
  if (entries.some(({ entry }) => lineFor(name, entry, catalogue) !== undefined)) {
    return cropName(name, catalogue);
  }
  return findCrop(catalogue, name).name;
}

/** A pair for each product of the user's own, and for each active that no such product of it alone stands for. */
function pairsBefore(question: Question, entries: readonly StoredLabel[], catalogue: Catalogue): Pair[] {
  const own = entries.filter(({ entry }) => lineFor(question.crop, entry, catalogue) !== undefined);
  const alone = new Set(
    own.flatMap(({ entry: { actives } }) =>
      actives.length === 1 ? [actives[0].name.trim().toLowerCase()] : [],
    ),
  );
  const inCatalogue = catalogue.crops.some(({ name }) => name === question.crop);
  return [
    ...own.map(({ entry }) => ({
      name: `${entry.actives.map(({ name }) => name).join(' + ')} (your label ${entry.name})`,
      question: { ...question, residual: entry.actives[0].name, labelEntry: entry.id },
      entry,
    })),
    ...(inCatalogue ? catalogue.actives : [])
      .filter(({ isoName }) => !alone.has(isoName))
      .map(({ isoName }) => ({ name: isoName, question: { ...question, residual: isoName }, entry: null })),
  ];
}

/** Those that would do first, then those the label allows, then the rest; each by odds. */
const byUse = (a: ResidualRow, b: ResidualRow): number => {
  const rank = ({ withinLimit, labelAllows }: ResidualRow) => (withinLimit ? 0 : labelAllows ? 1 : 2);
  return (
    rank(a) - rank(b) ||
    (a.oddsAtPlanting ?? 0) - (b.oddsAtPlanting ?? 0) ||
    (a.residual < b.residual ? -1 : 1)
  );
};

/** Odds that the spray is washed in; they hang on no crop. */
function activationOf(
  resolved: ResolvedQuestion,
  { set, activations }: SeasonInCommon,
  { climate }: StationWeather,
): NonNullable<Comparison['activation']> {
  const { plantDay, application, question } = resolved;
  const activation = activations.get(plantDay) ?? washedIn();
  activations.set(plantDay, activation);
  return activation;

  function washedIn() {
    const { appliedDay } = application;
    const { activationRainMm, activationDays } = question.assume;
    const asked = seasonQuestionOf(resolved, climate.series);
    const plantOffset = plantDay - appliedDay;
    const years = set.years(Math.max(plantOffset, activationDays) + 1);
    const { odds, range } = activationOdds(
      set.traces(application.response, years),
      yearWeights(climate, years, plantOffset, appliedDay, asked.outlook),
      activationRainMm,
      activationDays,
    );
    return { odds, ...range, neededMm: activationRainMm, withinDays: activationDays };
  }
}
