import { median } from '../model/odds/quantile.ts';
import { weightedMean } from '../model/years/weightedMean.ts';
import { labelDayOf } from './applications.ts';
import { breakdownRecord } from './breakdownRecord.ts';
import { oddsGiven } from './plantingOdds.ts';
import { type CourseOfSums, plainMeanOdds, quickCurve, stretchesOf } from './quickCurve.ts';
import type { SeasonOdds } from './seasonOdds.ts';
import type { SeasonQuestion } from './seasonQuestion.ts';
import type { StationClimate } from './stationClimate.ts';

/** How many times the label's time a field needs by the planting date; the five factors multiply to the whole. [-] */
export interface WhyFactors {
  readonly calendar: number;
  readonly warmth: number;
  readonly rain: number;
  readonly dose: number;
  readonly soil: number;
  readonly whole: number;
}

/** Why there are no factors. */
export type NoFactors = 'several parts' | 'harmless dose' | 'no breakdown yet';

/** A part of the dose: what fell on the ground or on leaves in one application. */
export interface DosePart {
  /** Which application, in the order of the question. */
  readonly application: number;
  readonly where: 'ground' | 'leaves';
  /** Odds at planting with this part alone, and with all the others [0-1]. */
  readonly oddsWith: number;
  readonly oddsWithout: number;
}

/** The reasons behind the odds at planting. */
export interface Why {
  readonly factors: WhyFactors | null;
  readonly noFactors: NoFactors | null;
  /** Clear date with the real rain less clear date with label-basis rain [d]; null where either is missing. */
  readonly rainDays: number | null;
  /** The parts of the dose, where there are several. */
  readonly parts: readonly DosePart[];
}

/** Breakdown days to planting that the factors are made of. [breakdown days] */
interface PlantingSums {
  /** Of the real run, one per year: W_y. */
  readonly real: readonly number[];
  /** Of the label run at each trace's warmth: V_y. */
  readonly label: readonly number[];
  /** Median of the label run over the years' own calendar days: V. */
  readonly labelMedian: number;
}

/**
 * Why the odds are what they are, before any evidence from the field.
 *
 * Equation   calendar = D_L/V; warmth = exp M ln(V/V_y); rain = exp M ln(V_y/W_y);
 *            dose = (ln(1/τ) + ln ℓ)/ln(1/τ); soil = h_s/h
 * Symbols    D_L = demand; W_y, V_y = breakdown days of trace y to planting, real and of the label run at the trace's
 *            own warmth; V = median of the label run over the same calendar days; M = mean over the years
 * Valid      one application on bare soil, every W_y above 0 and a dose above the harmless one; else no factors
 * Source     own reduction; the product telescopes to exp M ln(D_L/W_y)·dose·soil
 * Checked    test/analysis/why.test.ts, each factor by its own definition
 */
export function why(climate: StationClimate, question: SeasonQuestion, odds: SeasonOdds): Why {
  const [{ application, logMargin }] = odds.judged;
  const none = { factors: null, rainDays: null, parts: [] };
  if (odds.judged.length > 1 || application.canopyFraction > 0) {
    return { ...none, noFactors: 'several parts', parts: dosePartsOf(question, odds) };
  }
  const logExcess = logMargin + Math.log(application.load);
  if (logExcess <= 0) return { ...none, noFactors: 'harmless dose' };
  const labelRuns = odds.judged[0].traces.map((trace) => trace.labelRun());
  const rainDays = rainDaysOf(question, odds, logExcess, labelRuns);
  const sums = plantingSums(climate, question, odds, labelRuns);
  const counted = (values: readonly number[]) =>
    values.every((value, year) => value > 0 || odds.weights[year] === 0);
  if (!counted(sums.real) || !counted(sums.label) || sums.labelMedian === 0) {
    return { ...none, rainDays, noFactors: 'no breakdown yet' };
  }
  return { ...none, rainDays, noFactors: null, factors: factorsOf(odds, sums, logExcess) };
}

function factorsOf(
  { judged: [{ application, demand, logMargin }], weights }: SeasonOdds,
  { real, label, labelMedian }: PlantingSums,
  logExcess: number,
): WhyFactors {
  const meanOf = (ratio: (year: number) => number) => {
    const logs = real.map((_, year) => (weights[year] === 0 ? 0 : Math.log(ratio(year))));
    return Math.exp(weightedMean(logs, weights));
  };
  const calendar = demand / labelMedian;
  const warmth = meanOf((year) => labelMedian / label[year]);
  const rain = meanOf((year) => label[year] / real[year]);
  const dose = logExcess / logMargin;
  const soil = application.siteFactor;
  return { calendar, warmth, rain, dose, soil, whole: calendar * warmth * rain * dose * soil };
}

function plantingSums(
  climate: StationClimate,
  question: SeasonQuestion,
  odds: SeasonOdds,
  labelRuns: readonly CourseOfSums[],
): PlantingSums {
  const { plantOffset, years, judged } = odds;
  const [{ application }] = judged;
  const { labelSums } = breakdownRecord(climate, question.layer, application.response, question.assumptions);
  return {
    real: years.map(({ breakdownDaysAtPlanting }) => breakdownDaysAtPlanting),
    label: labelRuns.map(({ sums, base }) => sums[base + plantOffset] - sums[base]),
    labelMedian: median(years.map(({ start }) => labelSums[start + plantOffset] - labelSums[start])),
  };
}

/** How many days later the field clears than it would with label-basis rain, warmth being what it is. [d] */
function rainDaysOf(
  question: SeasonQuestion,
  odds: SeasonOdds,
  logExcess: number,
  labelRuns: readonly CourseOfSums[],
): number | null {
  const [{ application, traces }] = odds.judged;
  const labelOffset = labelDayOf(application) - odds.firstDay;
  const treatment = {
    logExcess,
    siteHalfLife: application.halfLife * application.siteFactor,
    soilSpread: question.assumptions.soilSpread,
  };
  const reach = traces.map(({ lastOffset }) => lastOffset);
  const stretches = stretchesOf(reach, odds.weights, odds.horizonOffset);
  const clearWith = (years: readonly CourseOfSums[]) =>
    quickCurve(stretches, plainMeanOdds(treatment, years), 0).clearOffset(labelOffset, question.oddsLimit);
  const real = clearWith(traces);
  const label = clearWith(labelRuns);
  return real === null || label === null ? null : real - label;
}

function dosePartsOf(question: SeasonQuestion, odds: SeasonOdds): DosePart[] {
  const shares = odds.judged.flatMap(({ application: { canopyFraction } }, application) => [
    ...(canopyFraction < 1 ? [{ application, where: 'ground' as const }] : []),
    ...(canopyFraction > 0 ? [{ application, where: 'leaves' as const }] : []),
  ]);
  if (shares.length < 2) return [];
  return shares.map((share) => ({
    ...share,
    oddsWith: oddsOfShares(question, odds, [share]),
    oddsWithout: oddsOfShares(
      question,
      odds,
      shares.filter((other) => other !== share),
    ),
  }));
}

type Share = Pick<DosePart, 'application' | 'where'>;

/** Odds at planting where only some parts of the dose were ever sprayed; each keeps its own label margin. */
function oddsOfShares({ assumptions }: SeasonQuestion, odds: SeasonOdds, shares: readonly Share[]): number {
  const kept = shares.map(({ application, where }) => {
    const one = odds.judged[application];
    const { load, canopyFraction } = one.application;
    const part =
      where === 'ground'
        ? { load: load * (1 - canopyFraction), canopyFraction: 0 }
        : { load: load * canopyFraction, canopyFraction: 1 };
    return { ...one, application: { ...one.application, ...part } };
  });
  const { years, weights, firstDay, plantOffset } = odds;
  return oddsGiven({ judged: kept, years, weights, firstDay, plantOffset }, [], assumptions);
}
