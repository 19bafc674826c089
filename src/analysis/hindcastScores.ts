import { wilsonInterval } from '../model/odds/wilsonInterval.ts';
import { brierParts } from '../model/score/brierParts.ts';
import { brierSkill } from '../model/score/brierScore.ts';
import { type HindcastYear, SOILS_PER_YEAR } from './hindcast.ts';

/** Bins of the reliability diagram, each a tenth wide. */
const BINS = 10;

/** Forecasts of one tenth of the odds, with what happened. */
export interface ReliabilityBin {
  readonly from: number;
  readonly to: number;
  /** Forecasts in the bin: one for each year and lead. */
  readonly forecasts: number;
  /** Different years among them. */
  readonly years: number;
  readonly meanOdds: number;
  /** Share of the soils and years in which residue harmed [0-1]. */
  readonly observed: number;
  /** 95 % interval of that share from the number of different years alone: soils of one year share its weather. */
  readonly low: number;
  readonly high: number;
}

/** How a set of forecasts did. */
export interface HindcastScores {
  readonly brier: number;
  /** Against always giving the share in which harm came; null where it always or never came. */
  readonly skill: number | null;
  /** What would have been left with the year's weather known: the soils' own spread. */
  readonly brierWithWeatherKnown: number;
  readonly baseRate: number;
  readonly reliability: number;
  readonly resolution: number;
  readonly uncertainty: number;
  readonly bins: readonly ReliabilityBin[];
}

/**
 * Scores of hindcasts against their outcomes, for some of the leads.
 * @param leads places of the leads in each year's `odds`; at least one
 */
export function hindcastScores(years: readonly HindcastYear[], leads: readonly number[]): HindcastScores {
  const forecasts = years.flatMap(({ year, harmed, probability, odds }) =>
    leads.map((lead) => ({ year, odds: odds[lead], observed: harmed / SOILS_PER_YEAR, probability })),
  );
  const mean = (of: (one: (typeof forecasts)[number]) => number) =>
    forecasts.reduce((sum, one) => sum + of(one), 0) / forecasts.length;
  const scoreOf = (given: number, observed: number) =>
    observed * (1 - given) ** 2 + (1 - observed) * given ** 2;
  const brier = mean(({ odds, observed }) => scoreOf(odds, observed));
  const bins = Array.from({ length: BINS }, (_, bin) => {
    const own = forecasts.filter(({ odds }) => Math.min(BINS - 1, Math.floor(odds * BINS)) === bin);
    return own.length === 0 ? [] : [binOf(bin, own)];
  }).flat();
  const { baseRate, ...parts } = brierParts(
    bins.map(({ meanOdds, observed, forecasts: weight }) => ({ forecast: meanOdds, observed, weight })),
  );
  return {
    brier,
    skill: brierSkill(brier, baseRate),
    brierWithWeatherKnown: mean(({ probability, observed }) => scoreOf(probability, observed)),
    baseRate,
    ...parts,
    bins,
  };
}

function binOf(
  bin: number,
  own: readonly { readonly year: number; readonly odds: number; readonly observed: number }[],
): ReliabilityBin {
  const years = new Set(own.map(({ year }) => year)).size;
  const observed = own.reduce((sum, one) => sum + one.observed, 0) / own.length;
  return {
    from: bin / BINS,
    to: (bin + 1) / BINS,
    forecasts: own.length,
    years,
    meanOdds: own.reduce((sum, one) => sum + one.odds, 0) / own.length,
    observed,
    ...wilsonInterval(Math.min(years, observed * years), years),
  };
}
