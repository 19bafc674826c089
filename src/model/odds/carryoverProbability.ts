import { normalCdf } from './normalCdf.ts';

/** One part of a dose in the soil, measured against what is harmless. */
export interface ResiduePart {
  /** Logarithm of the part's dose over the harmless dose, ln(ℓ/τ) [-]. */
  readonly logExcess: number;
  /** First-order rate of the median soil times breakdown days, (ln 2/h_s)·W [-], >= 0. */
  readonly decayExponent: number;
}

/** Newton steps stop when the speed changes by less than this, relatively. */
const PRECISION = 1e-12;
const MAX_STEPS = 200;

/**
 * Probability that residue still harms, over soils of different breakdown speed. [0-1]
 *
 * Equation   p = Φ(z*), where X(z*) = 1 and X(z) = Σ (ℓ/τ)·exp(−e^(σ z)·(ln 2/h_s)·W);
 *            for one part z* = ln((ln(1/τ) + ln ℓ)·h_s/(ln 2·W))/σ
 * Symbols    parts: see {@link ResiduePart}; σ = soilSpread, of the logarithm of speed [-], > 0
 * Valid      p = 0 where the whole dose is harmless from the start; p = 1 where a part that has not decayed at all
 *            is harmful by itself
 * Source     own reduction: soils differ ln-normally in speed, z standard normal
 * Checked    test/model/carryoverProbability.test.ts (closed form, brute-force integration over z)
 * @example carryoverProbability([{ logExcess: 1, decayExponent: 1.5 }], 0.35) // 0.12334
 */
export function carryoverProbability(parts: readonly ResiduePart[], soilSpread: number): number {
  return parts.length === 1
    ? carryoverOfOnePart(parts[0].logExcess, parts[0].decayExponent, soilSpread)
    : shareOfSlowerSoils(speedOfManyParts(parts), soilSpread);
}

/** {@link carryoverProbability} of a single part, in closed form and without an array: the daily loop's own. [0-1] */
export function carryoverOfOnePart(logExcess: number, decayExponent: number, soilSpread: number): number {
  if (logExcess <= 0) return 0;
  return decayExponent > 0 ? shareOfSlowerSoils(logExcess / decayExponent, soilSpread) : 1;
}

/**
 * Weighted mean of {@link carryoverOfOnePart} over years, in one loop: what the search for clear dates spends its time on.
 * [0-1] Once a part of the sum is over the limit, so is the whole, for no term is negative: what comes back may then be
 * that part.
 *
 * @param courses each year's running sum of breakdown days and the index at which the year begins in it
 * @param kept places of the years that count, with their weights in the same order and the sum of these
 * @param ratePerDay first-order rate of the median soil, ln 2/h_s [1/breakdown day]
 * Valid      a year without any breakdown counts 1, as an infinite speed does
 * Checked    test/model/meanCarryover.test.ts (bit for bit against the years one by one)
 */
export function meanCarryover(
  courses: readonly { readonly sums: Float64Array; readonly base: number }[],
  { kept, relative, total }: { kept: readonly number[]; relative: Float64Array; total: number },
  offset: number,
  { logExcess, ratePerDay, soilSpread }: { logExcess: number; ratePerDay: number; soilSpread: number },
  limit: number,
): number {
  if (logExcess <= 0) return 0;
  let sum = 0;
  for (let k = 0; k < kept.length; k++) {
    const { sums, base } = courses[kept[k]];
    const speed = logExcess / (ratePerDay * (sums[base + offset] - sums[base]));
    sum += relative[k] * normalCdf(Math.log(speed) / soilSpread);
    if (sum / total > limit) break;
  }
  return sum / total;
}

/** Share of soils that break down slower than a speed (1 = the median soil's). [0-1] */
function shareOfSlowerSoils(speed: number, soilSpread: number): number {
  if (speed <= 0) return 0;
  if (speed === Number.POSITIVE_INFINITY) return 1;
  return normalCdf(Math.log(speed) / soilSpread);
}

/**
 * Breakdown speed at which the parts together are just harmless. ln X is convex and falls with speed, so
 * Newton steps from the harmful side never overshoot.
 */
function speedOfManyParts(parts: readonly ResiduePart[]): number {
  let speed = 0;
  if (logIndex(parts, speed).value <= 0) return 0;
  if (logOfUndecayed(parts) >= 0) return Number.POSITIVE_INFINITY;
  for (let step = 0; step < MAX_STEPS; step++) {
    const { value, slope } = logIndex(parts, speed);
    const next = speed - value / slope;
    if (!(next - speed > PRECISION * next)) return next;
    speed = next;
  }
  return speed;
}

/** ln X at a speed, and its slope. */
function logIndex(parts: readonly ResiduePart[], speed: number): { value: number; slope: number } {
  let top = Number.NEGATIVE_INFINITY;
  for (const part of parts) top = Math.max(top, part.logExcess - speed * part.decayExponent);
  let sum = 0;
  let slope = 0;
  for (const part of parts) {
    const share = Math.exp(part.logExcess - speed * part.decayExponent - top);
    sum += share;
    slope -= share * part.decayExponent;
  }
  return { value: top + Math.log(sum), slope: slope / sum };
}

function logOfUndecayed(parts: readonly ResiduePart[]): number {
  let sum = 0;
  for (const part of parts) if (part.decayExponent === 0) sum += Math.exp(part.logExcess);
  return Math.log(sum);
}
