import { assertWithin, InvalidInputError } from '../../errors.ts';

/**
 * Mean of values that count unequally. [unit of the values]
 *
 * Equation   x̄ = Σ w x/Σ w
 * Symbols    values = x, one per year; weights = w, weights of the years [–], each finite and at least 0
 * Valid      as many weights as values; equal weights give exactly the plain mean Σx/n. Different lengths or
 *            no weight above 0 -> InvalidInputError, a negative weight -> OutOfRangeError
 * Source     definition
 * Checked    test/published/outlook.json
 * @example   weightedMean([0, 1], [3, 1]) // 0.25
 */
export function weightedMean(values: ArrayLike<number>, weights: ArrayLike<number>): number {
  if (values.length !== weights.length) {
    throw new InvalidInputError(
      'WEIGHTS_DO_NOT_MATCH',
      `There are ${values.length} values and ${weights.length} weights; there must be as many of one as of the other.`,
      { hint: 'Give one weight for each value.' },
    );
  }
  let largest = 0;
  for (let i = 0; i < weights.length; i++) {
    assertWithin('weight', weights[i], 0, Number.MAX_VALUE);
    largest = Math.max(largest, weights[i]);
  }
  if (largest === 0) {
    throw new InvalidInputError('NO_WEIGHT', 'No value has a weight above 0; at least one must.', {
      hint: 'Choose a period or an outlook that leaves some years in.',
    });
  }
  let weighted = 0;
  let sum = 0;
  for (let i = 0; i < weights.length; i++) {
    // Relative to the largest, so that equal weights become exact ones.
    const relative = weights[i] / largest;
    weighted += relative * values[i];
    sum += relative;
  }
  return weighted / sum;
}
