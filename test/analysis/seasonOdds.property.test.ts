import { describe, expect, it } from 'vitest';
import type { Application } from '../../src/analysis/applications.ts';
import { seasonOdds } from '../../src/analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../../src/analysis/seasonQuestion.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { TEXTURE_CLASSES } from '../../src/schema/soil.ts';
import { plainApplication, plainQuestion } from '../cases/seasonOf.ts';
import fc from '../fastCheck.ts';
import { climateOfSeries, inventedSeries } from './inventedWeather.ts';

const RUNS = { numRuns: 40 };
/** Largest evaporation of a day in the made-up weather; the water recursion is monotone in rain where TEW − REW is above it. [mm] */
const LARGEST_EVAPORATION_MM = 10;

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
const months = fc.integer({ min: 1, max: 18 });
const rate = fc.double({ min: 0.2, max: 2, noNaN: true });
const plantOffset = fc.integer({ min: 10, max: 500 });

const APPLIED = parseIsoDate('2020-08-10');
/** Years whose windows all lie inside the made-up record, so that the set of years is the same in every pair. */
const BASE = { from: 2001, to: 2012 };

const application = (over: Partial<Application>): Application => ({
  ...plainApplication,
  appliedDay: APPLIED,
  ...over,
});
const question = (over: Partial<SeasonQuestion>): SeasonQuestion => ({
  ...plainQuestion,
  base: BASE,
  ...over,
});
const orNever = (offset: number | null) => offset ?? Number.POSITIVE_INFINITY;

describe('odds over a season, bare-soil spray, a fixed set of years', () => {
  it('less rain on days above freezing never brings the clear date forward', () => {
    fc.assert(
      fc.property(weather, layer, months, fc.double({ min: 0, max: 1, noNaN: true }), (w, soil, m, share) => {
        const wet = inventedSeries(w);
        const dry = {
          ...wet,
          rainMm: wet.rainMm.map((rain, day) =>
            wet.maxTempC[day] + wet.minTempC[day] > 0 ? rain * share : rain,
          ),
        };
        const asked = question({
          layer: soil,
          applications: [application({ interval: { months: m, days: 0 } })],
        });
        const inWet = seasonOdds(climateOfSeries(wet), asked);
        const inDry = seasonOdds(climateOfSeries(dry), asked);
        expect(inDry.years.map(({ year }) => year)).toEqual(inWet.years.map(({ year }) => year));
        expect(orNever(inDry.clearOffset)).toBeGreaterThanOrEqual(orNever(inWet.clearOffset));
        expect(inDry.oddsAtPlanting).toBeGreaterThanOrEqual(inWet.oddsAtPlanting - 1e-12);
      }),
      RUNS,
    );
  });

  it('a longer interval never lowers the odds, nor does a higher rate; a later planting date never raises them', () => {
    fc.assert(
      fc.property(weather, layer, months, rate, plantOffset, (w, soil, m, load, offset) => {
        const climate = climateOfSeries(inventedSeries(w));
        const ask = (interval: number, dose: number, later: number) =>
          seasonOdds(
            climate,
            question({
              layer: soil,
              applications: [application({ interval: { months: interval, days: 0 }, load: dose })],
              plantDay: APPLIED + offset + later,
            }),
          ).oddsAtPlanting;
        const plain = ask(m, load, 0);
        expect(ask(m + 3, load, 0)).toBeGreaterThanOrEqual(plain - 1e-12);
        expect(ask(m, load * 1.3, 0)).toBeGreaterThanOrEqual(plain - 1e-12);
        expect(ask(m, load, 30)).toBeLessThanOrEqual(plain + 1e-12);
      }),
      RUNS,
    );
  });
});

describe('odds over a season, always', () => {
  const anything = fc.record({
    weather,
    canopy: fc.double({ min: 0, max: 1, noNaN: true }),
    months: fc.integer({ min: 0, max: 24 }),
    days: fc.integer({ min: 1, max: 30 }),
    load: rate,
    plantOffset,
    observed: fc.option(fc.integer({ min: 0, max: 200 }), { nil: undefined }),
    rest: fc.constantFrom(1, 0, 0.5, 1.5),
    second: fc.boolean(),
  });

  it('never clears before the label date, and every output is finite and in its bounds', () => {
    fc.assert(
      fc.property(anything, (a) => {
        const climate = climateOfSeries(inventedSeries(a.weather));
        const applied = parseIsoDate('2013-08-10');
        const interval = { months: a.months, days: a.days };
        const first = application({ appliedDay: applied, interval, load: a.load, canopyFraction: a.canopy });
        const got = seasonOdds(
          climate,
          question({
            applications: a.second ? [first, application({ appliedDay: applied + 9, interval })] : [first],
            plantDay: applied + a.plantOffset,
            asOfDay: a.observed === undefined ? undefined : applied + a.observed,
            restOfSeasonRain: a.rest,
          }),
        );
        expect(orNever(got.clearOffset)).toBeGreaterThanOrEqual(got.labelOffset);
        for (const odds of [
          got.oddsAtPlanting,
          got.oddsAtLabel,
          got.range.low,
          got.range.high,
          ...got.curve.odds,
        ]) {
          expect(odds >= 0 && odds <= 1).toBe(true);
        }
        for (const year of got.years) {
          expect(year.probabilities.every((p) => p >= 0 && p <= 1)).toBe(true);
          expect(Number.isFinite(year.breakdownDaysAtPlanting) && Number.isFinite(year.warmRainMm)).toBe(
            true,
          );
          if (year.clearOffset !== null) expect(year.clearOffset).toBeGreaterThanOrEqual(got.labelOffset);
        }
        expect(got.thirds.every(({ odds }) => Number.isFinite(odds))).toBe(true);
        expect(Number.isFinite(got.demands[0]) && Number.isFinite(got.medianBreakdownDays)).toBe(true);
      }),
      RUNS,
    );
  });

  it('an outlook of equal chances gives the unweighted odds exactly', () => {
    fc.assert(
      fc.property(weather, plantOffset, (w, offset) => {
        const climate = climateOfSeries(inventedSeries(w));
        const asked = question({ plantDay: APPLIED + offset });
        const plain = seasonOdds(climate, asked);
        const tilted = seasonOdds(climate, {
          ...asked,
          outlook: { below: 1 / 3, near: 1 / 3, above: 1 / 3 },
        });
        expect(tilted.oddsAtPlanting).toBe(plain.oddsAtPlanting);
        expect(tilted.clearOffset).toBe(plain.clearOffset);
      }),
      RUNS,
    );
  });

  it('spraying into a canopy never hurts more than spraying bare ground once the leaves are clean of it', () => {
    const climate = climateOfSeries(inventedSeries({ seed: 5, wetShare: 0.3, wetDayMm: 5, meanTempC: 9 }));
    const at = (canopyFraction: number) =>
      seasonOdds(climate, question({ applications: [application({ canopyFraction })] })).oddsAtPlanting;
    const bare = at(0);
    const leafy = at(0.8);
    expect(leafy).toBeLessThan(bare);
    expect(leafy).toBeGreaterThan(0);
  });

  it('a season whose weather is wholly the year’s own gives the planning answer again', () => {
    const climate = climateOfSeries(inventedSeries({ seed: 9, wetShare: 0.2, wetDayMm: 6, meanTempC: 8 }));
    const asked = question({ applications: [application({})] });
    const plain = seasonOdds(climate, asked);
    const scaled = seasonOdds(climate, { ...asked, restOfSeasonRain: 1 + 1e-12 });
    expect(scaled.oddsAtPlanting).toBeCloseTo(plain.oddsAtPlanting, 9);
  });
});
