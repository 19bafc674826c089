import { describe, expect, it } from 'vitest';
import { oddsLimitOf } from '../../src/app/oddsLimitHelper.ts';
import fc from '../fastCheck.ts';

describe('oddsLimitOf', () => {
  it('is the odds at which waiting and planting cost the same in the mean', () => {
    expect(oddsLimitOf({ costOfWaiting: 20, lossAvoided: 160 })).toBe(0.125);
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        fc.double({ min: 1.01, max: 400, noNaN: true }),
        (costOfWaiting, times) => {
          const lossAvoided = costOfWaiting * times;
          const limit = oddsLimitOf({ costOfWaiting, lossAvoided });
          expect(limit * lossAvoided).toBeCloseTo(costOfWaiting, 6);
        },
      ),
    );
  });

  it('stays within what a question takes', () => {
    expect(oddsLimitOf({ costOfWaiting: 1, lossAvoided: 1e9 })).toBe(0.001);
    expect(oddsLimitOf({ costOfWaiting: 1, lossAvoided: 1.0000001 })).toBe(0.999);
  });

  it('refuses stakes with which waiting never pays, and figures that are none', () => {
    expect(() => oddsLimitOf({ costOfWaiting: 50, lossAvoided: 50 })).toThrow(
      expect.objectContaining({ code: 'WAITING_NEVER_PAYS' }),
    );
    expect(() => oddsLimitOf({ costOfWaiting: 0, lossAvoided: 50 })).toThrow(
      'cost of waiting is 0; it must be more than 0.',
    );
    expect(() => oddsLimitOf({ costOfWaiting: 5, lossAvoided: Number.NaN })).toThrow('loss avoided');
  });
});
