import type { PairAnswer, PairSeason } from '../analysis/pairSeason.ts';
import { warmRainThirds } from '../analysis/thirds.ts';
import { controlWeeks } from '../analysis/weedControl.ts';
import { titleOf } from '../catalogue/titleOf.ts';
import { responseKey } from '../model/run/breakdownSums.ts';
import type { Catalogue } from '../schema/catalogue.ts';
import type { ResidualRow } from '../schema/comparison.ts';
import type { LabelEntry } from '../schema/labelEntry.ts';
import { dateOfOffset, type JudgedPair } from './pairAnswers.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import type { SeasonInCommon } from './sharedSeasons.ts';

/**
 * A residual's row in a comparison.
 * @param entry the user's own label entry that it goes by; null where the catalogue counts
 * @param common what all rows of the season share
 */
export function residualRow(
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
