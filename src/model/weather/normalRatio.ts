/** Normals that differ by no more than this share of the gauge's own count as alike. [0-1] */
const ALIKE_SHARE = 0.1;

/** What one neighbour says about a missing amount. */
export interface NeighbourAmount {
  /** The neighbour's own long-term mean, > 0. */
  readonly normal: number;
  /** The gauge's long-term mean over the same time; the same for all neighbours where each has the same years. */
  readonly gaugeNormal: number;
  /** What the neighbour measured. */
  readonly amount: number;
}

/**
 * Missing rain of a gauge from its neighbours. [unit of the amounts]
 *
 * Equation   P_x = (1/m)·Σ (N_x/N_i)·P_i; where every N_i lies within 10 % of N_x, (1/m)·Σ P_i
 * Symbols    N_x = gaugeNormal, N_i = normal, P_i = amount of neighbour i, m = number of neighbours >= 1
 * Valid      N_i > 0; normals and amounts each in one unit
 * Source     normal-ratio method, as taught in hydrology courses
 * Checked    test/published/neighbours.json (C-NR-1)
 * @example normalRatioAmount([{ gaugeNormal: 92, normal: 46, amount: 10 }]) // 20
 */
export function normalRatioAmount(neighbours: readonly NeighbourAmount[]): number {
  const alike = neighbours.every(
    ({ normal, gaugeNormal }) => Math.abs(normal - gaugeNormal) <= ALIKE_SHARE * gaugeNormal,
  );
  const sum = neighbours.reduce(
    (total, { normal, gaugeNormal, amount }) => total + (alike ? amount : (gaugeNormal / normal) * amount),
    0,
  );
  return sum / neighbours.length;
}
