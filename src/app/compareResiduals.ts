import type { TraceSet } from '../analysis/seasonTraceSet.ts';
import { activationOdds, controlWeeks } from '../analysis/weedControl.ts';
import { yearWeights } from '../analysis/yearWeights.ts';
import { findCrop } from '../catalogue/findCrop.ts';
import type { Active, Catalogue } from '../schema/catalogue.ts';
import {
  type Comparison,
  type ComparisonInput,
  comparisonQuestionSchema,
  type ResidualRow,
} from '../schema/comparison.ts';
import type { AnswerDeps } from './answerField.ts';
import type { StationWeather } from './climateCache.ts';
import { sharedCautions } from './comparisonCautions.ts';
import { modelOf } from './modelOf.ts';
import {
  conditionedAll,
  dateOfOffset,
  isUnjudged,
  type JudgedPair,
  judgedOrTold,
  judgePair,
  type KnownSeasons,
  NOTHING_BESIDE,
  resolveAll,
  sharedSeason,
} from './pairAnswers.ts';
import { readQuestion } from './readQuestion.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';

/**
 * Every residual of the catalogue before one crop on one date: carryover odds against weeks of weed control.
 * Rate, overlap and leaves are taken the same for all, each as a share of its own top label rate.
 *
 * @throws {InvalidInputError} CROP_UNKNOWN and what {@link answerField} throws about dates, soil and weather
 * @example (await compareResiduals({ station: 'demo-invented', crop: 'lentil', appliedOn: '2026-08-14', plantOn: '2027-05-10' }, deps)).crop // 'lentil'
 */
export async function compareResiduals(input: ComparisonInput, deps: AnswerDeps): Promise<Comparison> {
  const question = readQuestion(comparisonQuestionSchema, input);
  const { catalogue } = deps;
  const model = modelOf(deps.version);
  const crop = findCrop(catalogue, question.crop).name;
  const { resolved: asked, unjudged } = resolveAll(
    catalogue.actives.map(({ isoName }) => ({
      name: isoName,
      question: { ...question, ...NOTHING_BESIDE, crop, residual: isoName },
    })),
    catalogue,
  );
  const weather = await deps.climates.of({ ...question, ...NOTHING_BESIDE, residual: '' });
  if (asked.length === 0) {
    return { question, crop, activation: null, residuals: [], unjudged, cautions: [], model };
  }
  const resolved = conditionedAll(asked, weather, catalogue);
  const [{ plantDay }] = resolved;
  const set = sharedSeason(resolved, weather, plantDay);
  const known: KnownSeasons = new Map();
  const rows = resolved.map((one) =>
    judgedOrTold(one.active?.isoName ?? '', () =>
      residualRow(judgePair(one, set, weather, known), set, catalogue),
    ),
  );
  return {
    question,
    crop,
    activation: activationOf(resolved[0], set, weather),
    residuals: rows.filter((row): row is ResidualRow => !isUnjudged(row)).sort(byUse),
    unjudged: [...unjudged, ...rows.filter(isUnjudged)],
    cautions: sharedCautions(weather, question.labelEntry),
    model,
  };
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
  { resolved, season, labelDate }: JudgedPair,
  set: TraceSet,
  catalogue: Catalogue,
): ResidualRow {
  const { active, question, interval, plantDay } = resolved;
  if (active === null) throw new Error('every residual of a comparison comes from the catalogue');
  const labelAllows = !resolved.labelForbids && labelDate <= question.plantOn;
  const known = {
    residual: active.isoName,
    group: String(active.group),
    interval,
    labelDate,
    labelAllows,
    weeksOfControl: weeksOf(resolved, set),
    halfLife: halfLifeOf(active, catalogue),
  };
  if (season === null) {
    return {
      ...known,
      carryoverModelled: false,
      clearDate: labelDate,
      withinLimit: labelAllows,
      oddsAtPlanting: null,
      oddsRange: null,
      thirdOdds: null,
      oddsAtLabelDate: null,
    };
  }
  const answer = season.at(plantDay);
  return {
    ...known,
    carryoverModelled: true,
    clearDate: dateOfOffset(resolved, answer.clearOffset()),
    withinLimit: labelAllows && answer.oddsAtPlanting <= question.oddsLimit,
    oddsAtPlanting: answer.oddsAtPlanting,
    oddsRange: { ...answer.range(), years: answer.years },
    thirdOdds: {
      dry: answer.thirdOdds('dry'),
      middle: answer.thirdOdds('middle'),
      wet: answer.thirdOdds('wet'),
    },
    oddsAtLabelDate: answer.oddsAtLabel(),
  };
}

function halfLifeOf(active: Active, catalogue: Catalogue): ResidualRow['halfLife'] {
  const from = active.provenance.halfLifeTypical ?? active.provenance.halfLifeLow;
  if (active.fieldHalfLifeDays === null || from === null) return null;
  return {
    days: active.fieldHalfLifeDays.typical,
    mark: active.provenance.halfLifeTypical === null ? 'computed' : from.mark,
    sources: from.sources.map((id) => catalogue.sources.find((source) => source.id === id)?.reference ?? id),
  };
}

/** Weeks of control; thirds by warm rain from spraying to planting, so that they do not hang on a label. */
function weeksOf(resolved: ResolvedQuestion, set: TraceSet): ResidualRow['weeksOfControl'] {
  const { halfLife, application, active, question, plantDay } = resolved;
  if (halfLife.halfLifeDays === null || active?.soilResidual === 'no') return null;
  const plantOffset = plantDay - application.appliedDay;
  const years = set.years(plantOffset + 1);
  const { warmRain } = set.climate;
  const weeks = controlWeeks(
    set.traces(application.response, years),
    years.map(({ start }) => warmRain[start + plantOffset] - warmRain[start]),
    application.halfLife * application.siteFactor,
    question.assume.controlFractionLeft,
  );
  const orNull = (value: number) => (Number.isFinite(value) ? value : null);
  return { dry: orNull(weeks.dry), middle: orNull(weeks.middle), wet: orNull(weeks.wet) };
}

function activationOf(
  resolved: ResolvedQuestion,
  set: TraceSet,
  { climate }: StationWeather,
): NonNullable<Comparison['activation']> {
  const { plantDay, application, question } = resolved;
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
