import { assertWithin, InvalidInputError } from '../../errors.ts';

/**
 * Number of equally weighted years that tell as much as these weighted ones. [–]
 *
 * Equation   n_eff = (Σw)²/Σw²
 * Symbols    weights = w, weights of the years [–], each finite and at least 0, not all 0
 * Valid      independent years; equal weights give exactly their number; no weight above 0
 *            -> InvalidInputError, a negative one -> OutOfRangeError
 * Source     effective sample size of a weighted sample (from memory)
 * Checked    test/published/outlook.json
 * @example   effectiveYears([1, 1, 2]) // 2.667
 */
export function effectiveYears(weights: ArrayLike<number>): number {
  let largest = 0;
  for (let i = 0; i < weights.length; i++) {
    assertWithin('weight', weights[i], 0, Number.MAX_VALUE);
    largest = Math.max(largest, weights[i]);
  }
  if (largest === 0) {
    throw new InvalidInputError('NO_WEIGHT', 'No year has a weight above 0; at least one must.', {
      hint: 'Choose a period or an outlook that leaves some years in.',
    });
  }
  let sum = 0;
  let sumOfSquares = 0;
  for (let i = 0; i < weights.length; i++) {
    // Relative to the largest, so that equal weights become exact ones.
    const relative = weights[i] / largest;
    sum += relative;
    sumOfSquares += relative * relative;
  }
  return (sum * sum) / sumOfSquares;
}
