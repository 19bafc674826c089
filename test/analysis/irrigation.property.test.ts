import { describe, expect, it } from 'vitest';
import { seasonOdds } from '../../src/analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../../src/analysis/seasonQuestion.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { TEXTURE_CLASSES } from '../../src/schema/soil.ts';
import { plainApplication, plainQuestion } from '../cases/seasonOf.ts';
import fc from '../fastCheck.ts';
import { climateOfSeries, inventedSeries } from './inventedWeather.ts';

const RUNS = { numRuns: 25 };
/** Largest evaporation of a day in the made-up weather; the water recursion is monotone where TEW − REW is above it. [mm] */
const LARGEST_EVAPORATION_MM = 10;
const APPLIED = parseIsoDate('2013-08-10');

const weather = fc.record({
  seed: fc.integer({ min: 1, max: 1e9 }),
  wetShare: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
  wetDayMm: fc.double({ min: 1, max: 10, noNaN: true }),
  meanTempC: fc.double({ min: 0, max: 18, noNaN: true }),
});
const layer = fc
  .tuple(fc.constantFrom(...TEXTURE_CLASSES), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([textureClass, cover]) => topsoilLayer({ textureClass }, 2, cover))
  .filter(({ tewMm, rewMm }) => tewMm - rewMm > LARGEST_EVAPORATION_MM);
const irrigation = fc.array(
  fc.record({
    day: fc.integer({ min: APPLIED - 60, max: APPLIED + 300 }),
    mm: fc.double({ min: 0, max: 60, noNaN: true }),
  }),
  { minLength: 1, maxLength: 8 },
);
const observed = fc.option(fc.integer({ min: 0, max: 200 }), { nil: undefined });

const question = (over: Partial<SeasonQuestion>): SeasonQuestion => ({
  ...plainQuestion,
  applications: [{ ...plainApplication, appliedDay: APPLIED }],
  plantDay: APPLIED + 273,
  base: { from: 2001, to: 2012 },
  ...over,
});

describe('irrigation on bare-soil spray', () => {
  it('never lowers any year’s breakdown and never raises the odds, on any day; more of it neither', () => {
    fc.assert(
      fc.property(weather, layer, irrigation, observed, (w, soil, water, days) => {
        const climate = climateOfSeries(inventedSeries(w));
        const asOfDay = days === undefined ? undefined : APPLIED + days;
        const ask = (factor: number) =>
          seasonOdds(
            climate,
            question({
              layer: soil,
              asOfDay,
              irrigation: water.map(({ day, mm }) => ({ day, mm: mm * factor })),
            }),
          );
        const [none, some, more] = [0, 1, 2].map(ask);
        for (const [less, given] of [
          [none, some],
          [some, more],
        ]) {
          given.years.forEach((year, index) => {
            expect(year.breakdownDaysAtPlanting).toBeGreaterThanOrEqual(
              less.years[index].breakdownDaysAtPlanting - 1e-9,
            );
          });
          expect(given.curve.odds.every((odds, offset) => odds <= less.curve.odds[offset] + 1e-12)).toBe(
            true,
          );
          expect(given.demands).toEqual(less.demands);
        }
      }),
      RUNS,
    );
  });
});

describe('irrigation', () => {
  const climate = climateOfSeries(inventedSeries({ seed: 3, wetShare: 0.1, wetDayMm: 4, meanTempC: 10 }));
  const given = (offset: number, mm = 40) => [{ day: APPLIED + offset, mm }];

  it('speeds a dry season up in every year while planning and in season', () => {
    for (const asOfDay of [undefined, APPLIED + 30]) {
      const dry = seasonOdds(climate, question({ asOfDay }));
      const wet = seasonOdds(climate, question({ asOfDay, irrigation: given(5) }));
      expect(wet.oddsAtPlanting).toBeLessThan(dry.oddsAtPlanting);
      for (const [index, year] of wet.years.entries()) {
        expect(year.breakdownDaysAtPlanting).toBeGreaterThan(dry.years[index].breakdownDaysAtPlanting);
      }
    }
  });

  it('before the application wets the soil that the spray falls on', () => {
    const dry = seasonOdds(climate, question({}));
    const wet = seasonOdds(climate, question({ irrigation: given(-1) }));
    expect(wet.medianBreakdownDays).toBeGreaterThan(dry.medianBreakdownDays);
  });

  it('of nothing, or far from the season, changes nothing at all', () => {
    const plain = seasonOdds(climate, question({}));
    for (const irrigation of [given(5, 0), given(5000), given(-800)]) {
      expect(seasonOdds(climate, question({ irrigation })).curve.odds).toEqual(plain.curve.odds);
    }
  });

  it('washes spray off leaves', () => {
    const sprayed = [{ ...plainApplication, appliedDay: APPLIED, canopyFraction: 1 }];
    const still = seasonOdds(climate, question({ applications: sprayed }));
    const washed = seasonOdds(climate, question({ applications: sprayed, irrigation: given(1, 60) }));
    // What rain would have washed later, weakened on the leaf, is on the soil at once.
    expect(washed.oddsAtPlanting).not.toBe(still.oddsAtPlanting);
    const share = (odds: typeof still) => odds.years.map(({ probabilities }) => probabilities[60]);
    expect(share(washed)).not.toEqual(share(still));
  });
});
