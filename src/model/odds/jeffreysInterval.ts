import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { assertWithin, OutOfRangeError } from '../../errors.ts';
import type { ProbabilityInterval } from './wilsonInterval.ts';

/**
 * Equal-tailed interval for the probability of a yes-or-no event, from an uninformed start. [–]
 *
 * Equation   quantiles (1 − level)/2 and (1 + level)/2 of Beta(x + ½, n − x + ½)
 * Symbols    events = x, years with the event [–], 0 to n; n = years [–], above 0
 *            level = probability inside the interval [–], 0.5 to 0.999, default 0.95
 * Valid      independent years; 0 of n has the low end 0, n of n the high end 1; outside -> OutOfRangeError
 * Source     Jeffreys interval
 * Checked    test/published/intervals.json
 * @example   jeffreysInterval(9, 30) // { low: 0.159993, high: 0.476544 }
 */
export function jeffreysInterval(events: number, n: number, level = 0.95): ProbabilityInterval {
  if (!(n > 0)) throw new OutOfRangeError('n', n, 'above 0');
  assertWithin('events', events, 0, n);
  assertWithin('level', level, 0.5, 0.999);
  const tail = (1 - level) / 2;
  const yes = events + 0.5;
  const no = n - events + 0.5;
  return {
    low: events === 0 ? 0 : betaQuantile(tail, yes, no),
    high: events === n ? 1 : betaQuantile(1 - tail, yes, no),
  };
}
