import { describe, expect, it } from 'vitest';
import { moistureResponse } from '../../src/model/breakdown/moistureResponse.ts';
import { powerOf, powerTable } from '../../src/model/breakdown/powerTable.ts';
import { temperatureResponse } from '../../src/model/breakdown/temperatureResponse.ts';
import { warmthOf, warmthTable } from '../../src/model/breakdown/warmthTable.ts';
import fc from '../fastCheck.ts';

const RUNS = { numRuns: 3000 };
/** Nine units in the last place of a double. */
const NEAR = 2e-15;
const near = (actual: number, expected: number): void => {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(
    NEAR * Math.abs(expected),
  );
};

describe('tables in place of powers', () => {
  it('give the response to warmth of its own equation', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 6, noNaN: true }),
        fc.double({ min: -40, max: 80, noNaN: true }),
        (q10, tempC) => near(warmthOf(warmthTable(q10), tempC), temperatureResponse(tempC, q10)),
      ),
      RUNS,
    );
    for (const tempC of [0, 1e-12, 0.125, 59.999, 60, 61]) {
      near(warmthOf(warmthTable(2.58), tempC), temperatureResponse(tempC, 2.58));
    }
  });

  it('give the response to moisture of its own equation, down to air-dry soil', () => {
    const anywhere = fc.oneof(
      fc.double({ min: -0.5, max: 1.5, noNaN: true }).filter((x) => x <= 0 || x > 1e-60),
      fc.double({ min: -60, max: 0, noNaN: true }).map((power) => 2 ** power),
    );
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 3, noNaN: true }), anywhere, (exponent, wetness) =>
        near(powerOf(powerTable(exponent), wetness), moistureResponse(wetness, exponent)),
      ),
      RUNS,
    );
    for (const wetness of [0, 1, 0.5, 1 / 1024, 1 - 2 ** -53]) {
      near(powerOf(powerTable(0.1), wetness), moistureResponse(wetness, 0.1));
    }
  });

  it('give a plain 1 for an exponent of 0 wherever there is water', () => {
    for (const wetness of [1e-9, 0.3, 1]) expect(powerOf(powerTable(0), wetness)).toBe(1);
    expect(powerOf(powerTable(0), 0)).toBe(0);
  });
});
