import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../src/errors.ts';
import { arrheniusResponse } from '../../src/model/breakdown/arrheniusResponse.ts';
import { effectiveHalfLife } from '../../src/model/breakdown/effectiveHalfLife.ts';
import { fractionLeft } from '../../src/model/breakdown/fractionLeft.ts';
import { temperatureResponse } from '../../src/model/breakdown/temperatureResponse.ts';
import { canopyInterceptionFromLai } from '../../src/model/deposit/canopyInterception.ts';
import { foliageFractionLeft } from '../../src/model/deposit/foliageDecay.ts';
import { interceptionByStage } from '../../src/model/deposit/interceptionByStage.ts';
import { washOffFraction } from '../../src/model/deposit/washOff.ts';
import fc from '../fastCheck.ts';

describe('response to temperature', () => {
  it('is 0 at and below freezing in both forms', () => {
    for (const soilTempC of [-12, -0.001, 0]) {
      expect(temperatureResponse(soilTempC, 2.58)).toBe(0);
      expect(arrheniusResponse(soilTempC, 65.4)).toBe(0);
    }
  });

  it('multiplies by Q10 over any ten degrees above freezing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        (t, q10) => {
          expect(temperatureResponse(t + 10, q10) / temperatureResponse(t, q10)).toBeCloseTo(q10, 9);
        },
      ),
    );
  });

  it('refuses an activation energy or a temperature outside its range', () => {
    expect(() => arrheniusResponse(10, -1)).toThrow(OutOfRangeError);
    expect(() => arrheniusResponse(80, 65.4)).toThrow(OutOfRangeError);
  });
});

describe('first-order loss', () => {
  it('leaves all of it on day 0 and half of it after a half-life', () => {
    expect(fractionLeft(0, 60)).toBe(1);
    expect(fractionLeft(60, 60)).toBeCloseTo(0.5, 12);
  });

  it('does not depend on how the time is cut up and never grows', () => {
    const time = fc.double({ min: 0, max: 400, noNaN: true });
    fc.assert(
      fc.property(time, time, fc.double({ min: 1, max: 500, noNaN: true }), (a, b, h) => {
        expect(fractionLeft(a + b, h)).toBeCloseTo(fractionLeft(a, h) * fractionLeft(b, h), 12);
        expect(fractionLeft(a + b, h)).toBeLessThanOrEqual(fractionLeft(a, h));
      }),
    );
  });

  it('has no end where breakdown stands still', () => {
    expect(effectiveHalfLife(60, 0, 0.5)).toBe(Number.POSITIVE_INFINITY);
    expect(effectiveHalfLife(60, 1, 1)).toBe(60);
  });

  it('refuses time that runs backwards and a half-life of 0', () => {
    expect(() => fractionLeft(-1, 60)).toThrow('breakdownDays is -1');
    expect(() => fractionLeft(10, 0)).toThrow('halfLifeDays is 0; it must be above 0');
    expect(() => effectiveHalfLife(60, 1, 1.2)).toThrow('fW is 1.2');
    expect(() => foliageFractionLeft(3, Number.NaN)).toThrow('halfLifeDays is NaN');
  });
});

describe('spray on leaves', () => {
  it('is caught nowhere without leaves and washed off by no rain', () => {
    expect(canopyInterceptionFromLai(0.5, 0)).toBe(0);
    expect(washOffFraction(0)).toBe(0);
  });

  it('has the defaults of the sources', () => {
    expect(foliageFractionLeft(10)).toBeCloseTo(0.5, 12);
    expect(washOffFraction(20)).toBe(washOffFraction(20, 0.05));
  });

  it('changes cereals from tillering to elongation at BBCH 30', () => {
    expect([19, 20, 29, 30, 39, 40].map((stage) => interceptionByStage('cereals', stage))).toEqual([
      0.25, 0.5, 0.5, 0.7, 0.7, 0.9,
    ]);
  });

  it('refuses a stage that is no BBCH code, and turf that is not grass', () => {
    expect(() => interceptionByStage('maize', 100)).toThrow('Growth stage 100');
    expect(() => interceptionByStage('maize', 12.5)).toThrow('Growth stage 12.5');
    expect(() => interceptionByStage('maize', 12, 'established turf')).toThrow('must go with grass');
    expect(interceptionByStage('grass', 12, 'established turf')).toBe(0.9);
  });
});
