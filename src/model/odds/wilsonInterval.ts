import { assertWithin, OutOfRangeError } from '../../errors.ts';

/** Lower and upper end of an interval for a probability, 0 to 1. [–] */
export interface ProbabilityInterval {
  low: number;
  high: number;
}

/**
 * Score interval for the probability of a yes-or-no event seen in some of n years. [–]
 *
 * Equation   [p̂ + z²/2n ± z √(p̂(1 − p̂)/n + z²/4n²)] / (1 + z²/n), p̂ = x/n
 * Symbols    events = x, years with the event [–], 0 to n; n = years [–], above 0; an effective, fractional
 *            number of years is allowed
 *            z = standard normal quantile [–], 0 to 10, default 1.959964 for 95 %
 * Valid      independent years; 0 of n has the low end 0, n of n the high end 1; outside -> OutOfRangeError
 * Source     Wilson (score) interval; Statistics in Medicine 17, 857-872 (1998)
 * Checked    test/published/intervals.json
 * @example   wilsonInterval(9, 30) // { low: 0.166647, high: 0.478758 }
 */
export function wilsonInterval(events: number, n: number, z = 1.959964): ProbabilityInterval {
  if (!(n > 0)) throw new OutOfRangeError('n', n, 'above 0');
  assertWithin('events', events, 0, n);
  assertWithin('z', z, 0, 10);
  const share = events / n;
  const z2 = z * z;
  const scale = 1 + z2 / n;
  const centre = (share + z2 / (2 * n)) / scale;
  const halfWidth = (z * Math.sqrt((share * (1 - share)) / n + z2 / (4 * n * n))) / scale;
  return {
    low: events === 0 ? 0 : Math.max(0, centre - halfWidth),
    high: events === n ? 1 : Math.min(1, centre + halfWidth),
  };
}
