/** Ends of the grid of soils, in standard deviations. */
const GRID_END = 5;
/** Width of a cell. */
const STEP = 0.005;
const CELLS = Math.round((2 * GRID_END) / STEP) + 1;

/** Logarithm of the likelihood of what was found, for a soil z (standard normal, larger = faster). */
export type LogLikelihood = (z: number) => number;

/** How likely each soil is once the evidence is in. */
export interface SoilPosterior {
  /** Probability that the soil is slower than z. [0-1] */
  massBelow(z: number): number;
}

/**
 * Distribution over soils after evidence, by Bayes' rule on a grid.
 *
 * Equation   P(z | evidence) ∝ φ(z)·Π L_i(z), on cells of width 0.005 around −5 … 5
 * Symbols    z = how fast the soil is, standard normal before the evidence [-]; L_i = likelihood of finding i
 * Valid      findings independent once z is given, each likelihood finite somewhere on the grid; without any finding
 *            massBelow(z) = Φ(z) to 1e-5
 * Source     Bayes' rule
 * Checked    test/model/soilPosterior.test.ts (normal prior and normal likelihood, in closed form)
 */
export function soilPosterior(likelihoods: readonly LogLikelihood[]): SoilPosterior {
  const logMass = new Float64Array(CELLS);
  let largest = Number.NEGATIVE_INFINITY;
  for (let cell = 0; cell < CELLS; cell++) {
    const z = cell * STEP - GRID_END;
    let sum = -0.5 * z * z;
    for (const likelihood of likelihoods) sum += likelihood(z);
    logMass[cell] = sum;
    largest = Math.max(largest, sum);
  }
  const before = new Float64Array(CELLS + 1);
  for (let cell = 0; cell < CELLS; cell++)
    before[cell + 1] = before[cell] + Math.exp(logMass[cell] - largest);
  const total = before[CELLS];
  return {
    massBelow(z) {
      const position = (z + GRID_END) / STEP + 0.5;
      if (position <= 0) return 0;
      if (position >= CELLS) return 1;
      const cell = Math.floor(position);
      return (before[cell] + (position - cell) * (before[cell + 1] - before[cell])) / total;
    },
  };
}
