/**
 * Load: what a treatment puts on the ground and leaves together, in full label doses. [-]
 *
 * Equation   ℓ = (rate / top label rate)·overlap
 * Symbols    rateFraction = rate over the top label rate [-], > 0; overlapFactor >= 1
 * Valid      the share 1 − canopy reaches the soil at once; the rest see {@link leafWashOff}
 * Source     mass balance
 */
export const treatmentLoad = (rateFraction: number, overlapFactor: number): number =>
  rateFraction * overlapFactor;
