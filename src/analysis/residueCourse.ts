import { daysToCleanLeaves, leafWashOff } from '../model/deposit/leafWashOff.ts';
import {
  carryoverOfOnePart,
  carryoverProbability,
  type ResiduePart,
} from '../model/odds/carryoverProbability.ts';
import type { Trace } from './traces.ts';

/** A treatment with its margin worked out, on one trace. */
export interface JudgedTreatment {
  /** The course of breakdown for this treatment's active. */
  readonly trace: Trace;
  /** Days from the first application [d], >= 0. */
  readonly offsetDays: number;
  /** ln(1/τ) [-]. */
  readonly logMargin: number;
  /** Dose in full label doses [-]. */
  readonly load: number;
  /** Share of the dose caught by leaves [0-1]. */
  readonly canopyFraction: number;
  /** Site half-life [breakdown days]. */
  readonly siteHalfLife: number;
  /** Name of the residual. */
  readonly residual?: string;
}

/** How spray on leaves is lost. */
export interface LeafLoss {
  readonly foliageHalfLifeDays: number;
  readonly washOffPerMm: number;
}

/** Probability of harm at each offset from the first application, on one trace. */
export type ResidueCourse = (offset: number) => number;

/** A part of a dose with the trace's running sum on the day it reached the soil. */
interface Deposit {
  /** First offset at which the part counts as in the soil; before, it is to come or still on leaves. */
  readonly countsFrom: number;
  readonly trace: Trace;
  readonly logExcess: number;
  readonly ratePerBreakdownDay: number;
  readonly sumAtDeposit: number;
}

/** What is in the soil part by part, and what leaves still hold. */
interface Deposits {
  /** In the order in which the parts begin to count. */
  readonly onSoil: readonly Deposit[];
  readonly onLeaves: readonly {
    readonly treatment: JudgedTreatment;
    readonly logExcess: number;
    readonly left: Float64Array;
  }[];
}

function depositsOf(treatments: readonly JudgedTreatment[], leafLoss: LeafLoss): Deposits {
  const onSoil: Deposit[] = [];
  const onLeaves: Deposits['onLeaves'][number][] = [];
  for (const treatment of treatments) {
    const bare = treatment.load * (1 - treatment.canopyFraction);
    if (bare > 0) onSoil.push(depositOf(treatment, bare, treatment.offsetDays, treatment.offsetDays));
    const caught = treatment.load * treatment.canopyFraction;
    if (caught === 0) continue;
    const cleanFrom = treatment.offsetDays + daysToCleanLeaves(leafLoss.foliageHalfLifeDays) + 1;
    const rain = treatment.trace.liquidRainMm(
      treatment.offsetDays,
      Math.min(cleanFrom, treatment.trace.lastOffset),
    );
    const { washed, left } = leafWashOff(rain, leafLoss.foliageHalfLifeDays, leafLoss.washOffPerMm);
    for (const { offsetDays, share } of washed) {
      const day = treatment.offsetDays + offsetDays;
      onSoil.push(depositOf(treatment, caught * share, day, day + 1));
    }
    onLeaves.push({ treatment, logExcess: treatment.logMargin + Math.log(caught), left });
  }
  onSoil.sort((a, b) => a.countsFrom - b.countsFrom);
  return { onSoil, onLeaves };
}

/**
 * The course of the probability of harm for treatments whose residues add up, along one year's traces.
 * Offsets must lie from 0 to the traces' `lastOffset`.
 */
export function residueCourse(
  treatments: readonly JudgedTreatment[],
  soilSpread: number,
  leafLoss: LeafLoss,
): ResidueCourse {
  const { onSoil, onLeaves } = depositsOf(treatments, leafLoss);
  if (onSoil.length === 1 && onLeaves.length === 0) return courseOfOne(onSoil[0], soilSpread);

  return (offset) => {
    const parts = partsInSoil(onSoil, offset);
    for (const { treatment, logExcess, left } of onLeaves) {
      const share = left[offset - treatment.offsetDays] ?? 0;
      if (share > 0) parts.push({ logExcess: logExcess + Math.log(share), decayExponent: 0 });
    }
    return parts.length === 0 ? 0 : carryoverProbability(parts, soilSpread);
  };
}

/** What the soil itself holds at an offset, part by part: a soil sample leaves out what is still on leaves. */
export const soilParts = (
  treatments: readonly JudgedTreatment[],
  leafLoss: LeafLoss,
  offset: number,
): ResiduePart[] => partsInSoil(depositsOf(treatments, leafLoss).onSoil, offset);

function partsInSoil(onSoil: readonly Deposit[], offset: number): ResiduePart[] {
  const parts: ResiduePart[] = [];
  for (const { countsFrom, trace, logExcess, ratePerBreakdownDay, sumAtDeposit } of onSoil) {
    if (countsFrom > offset) break;
    const breakdownDays = trace.sums[trace.base + offset] - sumAtDeposit;
    parts.push({ logExcess, decayExponent: ratePerBreakdownDay * breakdownDays });
  }
  return parts;
}

/** One treatment on bare soil: nearly every question asked. */
function courseOfOne(deposit: Deposit, soilSpread: number): ResidueCourse {
  const { countsFrom, logExcess, ratePerBreakdownDay, sumAtDeposit } = deposit;
  const { sums, base } = deposit.trace;
  return (offset) =>
    offset < countsFrom
      ? 0
      : carryoverOfOnePart(logExcess, ratePerBreakdownDay * (sums[base + offset] - sumAtDeposit), soilSpread);
}

function depositOf(
  { trace, logMargin, siteHalfLife }: JudgedTreatment,
  load: number,
  day: number,
  countsFrom: number,
): Deposit {
  return {
    countsFrom,
    trace,
    logExcess: logMargin + Math.log(load),
    ratePerBreakdownDay: Math.LN2 / siteHalfLife,
    sumAtDeposit: trace.sums[trace.base + day],
  };
}
