import type { PairAnswer, PairSeason } from '../analysis/pairSeason.ts';

import { warmRainThirds } from '../analysis/thirds.ts';
import { activationOdds, controlWeeks } from '../analysis/weedControl.ts';
import { yearWeights } from '../analysis/yearWeights.ts';
import { findCrop } from '../catalogue/findCrop.ts';
import { titleOf } from '../catalogue/titleOf.ts';
import { responseKey } from '../model/run/breakdownSums.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import {
  type Comparison,
  type ComparisonInput,
  comparisonQuestionSchema,
  type ResidualRow,
} from '../schema/comparison.ts';
import type { LabelEntry, StoredLabel } from '../schema/labelEntry.ts';
import type { Question } from '../schema/question.ts';
import type { AnswerDeps } from './answerField.ts';
import { sharedCautions } from './comparisonCautions.ts';
import { modelOf } from './modelOf.ts';
import {
  dateOfOffset,
  isUnjudged,
  type JudgedPair,
  judgedOrTold,
  judgePair,
  NOTHING_FOUND,
  type Pair,
  resolveAll,
} from './pairAnswers.ts';
import { otherQuestions } from './preparedTreatments.ts';
import { readQuestion } from './readQuestion.ts';
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

function residualRow(
  entry: LabelEntry | null,
  { resolved, season, labelDate }: JudgedPair,
  common: SeasonInCommon,
  catalogue: Catalogue,
): ResidualRow {
  const { question, interval, plantDay } = resolved;
  const labelAllows = !resolved.labelForbids && labelDate <= question.plantOn;
  const figures = season === null ? NO_CARRYOVER : figuresOn(season, plantDay);
  const { oddsAtPlanting } = figures;
  // One literal: spreads would be half of what a comparison allocates.
  return {
    residual: resolved.treatmentName,
    labelEntry: entry && { id: entry.id, name: entry.name },
    group: resolved.groups ?? 'not known',
    interval,
    labelDate,
    labelAllows,
    weeksOfControl: weeksOf(resolved, common),
    halfLife: halfLifeOf(resolved, catalogue),
    carryoverModelled: season !== null,
    clearDate: season === null ? labelDate : figures.clearDate,
    withinLimit: labelAllows && (oddsAtPlanting ?? 0) <= question.oddsLimit,
    oddsAtPlanting,
    oddsRange: figures.oddsRange,
    thirdOdds: figures.thirdOdds,
    oddsAtLabelDate: figures.oddsAtLabelDate,
  };
}

/** What a row says of odds, and the date it clears. */
type ToldFigures = Pick<
  ResidualRow,
  'clearDate' | 'oddsAtPlanting' | 'oddsRange' | 'thirdOdds' | 'oddsAtLabelDate'
>;

const NO_CARRYOVER: ToldFigures = {
  clearDate: null,
  oddsAtPlanting: null,
  oddsRange: null,
  thirdOdds: null,
  oddsAtLabelDate: null,
};

const told = new WeakMap<PairAnswer, ToldFigures>();

/** Figures of a season on a planting date; crops that share the season share them. */
function figuresOn(season: PairSeason, plantDay: number): ToldFigures {
  const answer = season.at(plantDay);
  const figures = told.get(answer) ?? {
    clearDate: dateOfOffset(season, answer.clearOffset()),
    oddsAtPlanting: answer.oddsAtPlanting,
    oddsRange: { ...answer.range(), years: answer.years },
    thirdOdds: {
      dry: answer.thirdOdds('dry'),
      middle: answer.thirdOdds('middle'),
      wet: answer.thirdOdds('wet'),
    },
    oddsAtLabelDate: answer.oddsAtLabel(),
  };
  told.set(answer, figures);
  return figures;
}

function halfLifeOf({ active, halfLife }: ResolvedQuestion, catalogue: Catalogue): ResidualRow['halfLife'] {
  if (halfLife.halfLifeOrigin === 'own entry' && halfLife.halfLifeDays !== null) {
    return { days: halfLife.halfLifeDays, mark: 'own label', sources: [] };
  }
  const from = active?.provenance.halfLifeTypical ?? active?.provenance.halfLifeLow ?? null;
  if (active === null || active.fieldHalfLifeDays === null || from === null) return null;
  return {
    days: active.fieldHalfLifeDays.typical,
    mark: active.provenance.halfLifeTypical === null ? 'computed' : from.mark,
    sources: from.sources.map((id) => titleOf(id, catalogue.sources)),
  };
}

/** Weeks of control; thirds by warm rain from spraying to planting, so that they do not hang on a label. */
function weeksOf(
  resolved: ResolvedQuestion,
  { set, weeks: known }: SeasonInCommon,
): ResidualRow['weeksOfControl'] {
  const { halfLife, application, active, question, plantDay } = resolved;
  if (halfLife.halfLifeDays === null || active?.soilResidual === 'no') return null;
  const plantOffset = plantDay - application.appliedDay;
  const siteHalfLife = application.halfLife * application.siteFactor;
  const { response } = application;
  const key = `${responseKey(response)} ${siteHalfLife} ${plantOffset}`;
  const weeks = known.get(key) ?? controlled();
  known.set(key, weeks);
  const orNull = (value: number) => (Number.isFinite(value) ? value : null);
  return { dry: orNull(weeks.dry), middle: orNull(weeks.middle), wet: orNull(weeks.wet) };

  function controlled() {
    const years = set.years(plantOffset + 1);
    return controlWeeks(
      set.traces(response, years),
      warmRainThirds(set.climate.warmRain, years, plantOffset),
      siteHalfLife,
      question.assume.controlFractionLeft,
    );
  }
}

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
