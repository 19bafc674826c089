import { oddsLimitOf } from '../app/oddsLimitHelper.ts';
import { InvalidInputError } from '../errors.ts';

/** Flags that set the odds limit by what is at stake. */
export interface StakesFlags {
  waitingCost?: number;
  loss?: number;
}

/**
 * The odds limit that the stakes call for; nothing where none are given.
 * @throws {InvalidInputError} STAKES_INCOMPLETE where only one of the two is given
 */
export function limitFields({ waitingCost, loss }: StakesFlags): { oddsLimit?: number } {
  if (waitingCost === undefined && loss === undefined) return {};
  if (waitingCost === undefined || loss === undefined) {
    throw new InvalidInputError(
      'STAKES_INCOMPLETE',
      'The cost of waiting and the loss avoided set the odds limit together.',
      { hint: 'Give both --waiting-cost and --loss, or --limit instead.' },
    );
  }
  return { oddsLimit: oddsLimitOf({ costOfWaiting: waitingCost, lossAvoided: loss }) };
}
