import { InvalidInputError, OutOfRangeError } from '../errors.ts';

/** Limits that a question takes. [0-1] */
const LOWEST = 0.001;
const HIGHEST = 0.999;

/** What a decision to wait costs for certain, and what it avoids if residue would have hurt; in the same money. */
export interface Stakes {
  /** Of planting later, or another crop instead, > 0. */
  readonly costOfWaiting: number;
  /** Loss that is avoided where residue would have hurt the crop, > 0. */
  readonly lossAvoided: number;
}

/**
 * Odds limit at which waiting is just worth its cost. [0-1]
 *
 * Equation   limit = C/L: planting costs p·L in the mean, waiting costs C for certain
 * Symbols    C = costOfWaiting, L = lossAvoided, same unit, both > 0; C < L
 * Valid      a decider who minds a large loss no more than many small ones; kept within 0.001 … 0.999
 * Source     cost-loss rule of decision theory
 * Checked    test/app/oddsLimitHelper.test.ts
 * @throws {InvalidInputError} WAITING_NEVER_PAYS where waiting costs as much as the loss it avoids
 * @example   oddsLimitOf({ costOfWaiting: 20, lossAvoided: 160 }) // 0.125
 */
export function oddsLimitOf({ costOfWaiting, lossAvoided }: Stakes): number {
  assertAboveZero('cost of waiting', costOfWaiting);
  assertAboveZero('loss avoided', lossAvoided);
  if (costOfWaiting >= lossAvoided) {
    throw new InvalidInputError(
      'WAITING_NEVER_PAYS',
      `Waiting costs ${costOfWaiting} and avoids a loss of ${lossAvoided}: whatever the odds, it does not pay.`,
      {
        hint: 'Check the two figures, in the same money per acre; or set the odds limit yourself.',
        details: { costOfWaiting, lossAvoided },
      },
    );
  }
  return Math.min(HIGHEST, Math.max(LOWEST, costOfWaiting / lossAvoided));
}

function assertAboveZero(quantity: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) throw new OutOfRangeError(quantity, value, 'more than 0');
}
