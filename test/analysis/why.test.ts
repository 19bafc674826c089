import { beforeAll, describe, expect, it } from 'vitest';
import { breakdownRecord } from '../../src/analysis/breakdownRecord.ts';
import { type SeasonOdds, seasonOdds } from '../../src/analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../../src/analysis/seasonQuestion.ts';
import type { StationClimate } from '../../src/analysis/stationClimate.ts';
import { why } from '../../src/analysis/why.ts';
import { sayIn } from '../../src/app/say.ts';
import { whyBlock } from '../../src/app/whyBlock.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { median } from '../../src/model/odds/quantile.ts';
import { warmthFactors } from '../../src/model/run/breakdownSums.ts';
import { labelWater } from '../../src/model/run/labelWater.ts';
import { topsoilLayer } from '../../src/model/water/topsoilLayer.ts';
import { whySchema } from '../../src/schema/why.ts';
import { assumptions, climateOf, plainApplication, plainQuestion } from '../cases/seasonOf.ts';
import fc from '../fastCheck.ts';
import { describeWithRecords } from '../sharedWeather.ts';
import { climateOfSeries, inventedSeries } from './inventedWeather.ts';

const rows = [
  [0, 30, '2020-09-10'],
  [2, 0, '2020-10-15'],
  [4, 0, '2021-04-25'],
  [9, 0, '2021-05-10'],
  [12, 0, '2021-08-15'],
  [18, 0, '2022-05-01'],
] as const;

const questionOf = (
  months: number,
  days: number,
  plantOn: string,
  over: Partial<SeasonQuestion> = {},
  application: Partial<typeof plainApplication> = {},
): SeasonQuestion => ({
  ...plainQuestion,
  applications: [{ ...plainApplication, interval: { months, days }, ...application }],
  plantDay: parseIsoDate(plantOn),
  ...over,
});

/** Geometric mean over the years, by their weights. */
function geometric(values: readonly number[], weights: Float64Array): number {
  let sum = 0;
  let total = 0;
  for (const [year, value] of values.entries()) {
    sum += weights[year] * Math.log(value);
    total += weights[year];
  }
  return Math.exp(sum / total);
}

/**
 * Label-run breakdown days of a year's own weather, day by day from the record itself: its own wetness recursion, not
 * the engine's running sums.
 */
function labelRunOf(climate: StationClimate, start: number, days: number): number {
  const { forcing, series } = climate;
  const { response } = plainApplication;
  const loam = topsoilLayer({ textureClass: 'loam' }, 2, 0.6);
  const warmth = warmthFactors(forcing.soilTempC, forcing.snowMm, response);
  const water = labelWater(series.firstDay, forcing.meanTempC, 25, 12);
  let depletion = loam.tewMm / 2;
  let sum = 0;
  for (let day = 0; day < start + days; day++) {
    const wetted = Math.max(0, depletion - water[day]);
    const reduction = wetted <= loam.rewMm ? 1 : (loam.tewMm - wetted) / (loam.tewMm - loam.rewMm);
    const taken = (1 - 0.5 * 0.6) * (1.2 - 0.15) * reduction * forcing.et0Mm[day];
    depletion = Math.min(loam.tewMm, wetted + taken);
    const r = 1 - (wetted + depletion) / (2 * loam.tewMm);
    if (day >= start) sum += warmth[day] * Math.sqrt(Math.max(0, r));
  }
  return sum;
}

function checkFactors(climate: StationClimate, question: SeasonQuestion, odds: SeasonOdds): void {
  const { factors, noFactors } = why(climate, question, odds);
  expect(noFactors).toBeNull();
  if (factors === null) throw new Error('there are factors');
  const { plantOffset, weights, years } = odds;
  const [{ application, demand, logMargin }] = odds.judged;
  const record = breakdownRecord(climate, question.layer, application.response, assumptions);
  const real = years.map(({ breakdownDaysAtPlanting }) => breakdownDaysAtPlanting);
  const own = years.map(({ start }) => record.labelSums[start + plantOffset] - record.labelSums[start]);
  const V = median(own);
  const label = odds.judged[0].traces.map((trace) => {
    const run = trace.labelRun();
    return run.sums[run.base + plantOffset] - run.sums[run.base];
  });
  expect(factors.calendar).toBeCloseTo(demand / V, 12);
  expect(factors.warmth).toBeCloseTo(
    geometric(
      label.map((value) => V / value),
      weights,
    ),
    12,
  );
  expect(factors.rain).toBeCloseTo(
    geometric(
      label.map((value, year) => value / real[year]),
      weights,
    ),
    12,
  );
  expect(factors.dose).toBeCloseTo((logMargin + Math.log(application.load)) / logMargin, 12);
  expect(factors.soil).toBeCloseTo(application.siteFactor, 12);
  const whole =
    geometric(
      real.map((value) => demand / value),
      weights,
    ) *
    factors.dose *
    factors.soil;
  expect(factors.whole / whole).toBeCloseTo(1, 10);
}

describeWithRecords('why, on the cross-check rows', (folder) => {
  let climate: StationClimate;
  beforeAll(async () => {
    climate = await climateOf(`${folder}/derived`, 'USC00241044', 45.662);
  });

  it.each(rows)('%i months %i days before %s: each factor by its own definition', (months, days, plantOn) => {
    const question = questionOf(months, days, plantOn);
    const odds = seasonOdds(climate, question);
    checkFactors(climate, question, odds);
    const { factors } = why(climate, question, odds);
    // In planning the trace's warmth is the year's own: the label run of each trace is recomputed day by day.
    const recomputed = odds.years.map(({ start }) => labelRunOf(climate, start, odds.plantOffset));
    const warmth = geometric(
      recomputed.map((value) => median(recomputed) / value),
      odds.weights,
    );
    expect(Math.abs((factors?.warmth ?? 0) - warmth)).toBeLessThan(1e-9);
    expect(Math.abs((factors?.calendar ?? 0) - odds.demands[0] / median(recomputed))).toBeLessThan(1e-9);
  });

  it('planted on the label date in planning, calendar is 1 and dry country needs more for rain', () => {
    const question = questionOf(9, 0, '2021-05-10');
    const { factors } = why(climate, question, seasonOdds(climate, question));
    expect(factors?.calendar).toBe(1);
    expect(factors?.rain).toBeGreaterThan(1.1);
    expect(factors?.dose).toBe(1);
    expect(factors?.soil).toBe(1);
  });

  it('as of a date in the season, with dose, soil and an outlook: still the exact product', () => {
    const asOf = { asOfDay: parseIsoDate('2021-03-01') };
    const outlook = { below: 0.5, near: 0.3, above: 0.2 };
    for (const over of [asOf, { ...asOf, outlook }, { ...asOf, restOfSeasonRain: 0.6 }]) {
      const question = questionOf(9, 0, '2021-05-10', over, { load: 1.5, siteFactor: 1.3 });
      checkFactors(climate, question, seasonOdds(climate, question));
    }
  });

  it('tells the rain shortfall in calendar days: clear date with real rain less that with label-basis rain', () => {
    const question = questionOf(9, 0, '2021-05-10');
    const odds = seasonOdds(climate, question);
    const { rainDays } = why(climate, question, odds);
    expect(rainDays).toBeGreaterThan(0);
    // The label run in place of the real one: the same search over each day's odds.
    const { labelSums } = breakdownRecord(climate, question.layer, plainApplication.response, assumptions);
    const [{ logMargin }] = odds.judged;
    const oddsOn = (offset: number) => {
      let sum = 0;
      for (const { start } of odds.years) {
        const W = labelSums[start + offset] - labelSums[start];
        const z = Math.log((logMargin * plainApplication.halfLife) / (Math.LN2 * W)) / 0.35;
        sum += W === 0 ? 1 : normal(z);
      }
      return sum / odds.years.length;
    };
    let clear = odds.labelOffset;
    while (oddsOn(clear) > 0.1) clear++;
    expect(rainDays).toBe((odds.clearOffset ?? Number.NaN) - clear);
  });
});

/** Φ by Simpson's rule: independent of the library that the model uses. */
function normal(z: number): number {
  const steps = 2000;
  const low = -9;
  if (z <= low) return 0;
  const h = (z - low) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const x = low + i * h;
    sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-0.5 * x * x);
  }
  return (sum * h) / 3 / Math.sqrt(2 * Math.PI);
}

describe('why, on made-up weather', () => {
  const climate = climateOfSeries(inventedSeries({ seed: 7, wetShare: 0.25, wetDayMm: 6, meanTempC: 8 }));
  const base = {
    ...plainQuestion,
    base: {},
    applications: [{ ...plainApplication, appliedDay: parseIsoDate('2010-08-10') }],
    plantDay: parseIsoDate('2011-05-10'),
  };
  const whyOf = (question: SeasonQuestion) => {
    const odds = seasonOdds(climate, question);
    return { odds, reasons: why(climate, question, odds) };
  };

  it('multiplies to the whole whatever the question', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.8, max: 4, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.integer({ min: 40, max: 500 }),
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        (load, siteFactor, days, restOfSeasonRain) => {
          const [application] = base.applications;
          const question = {
            ...base,
            restOfSeasonRain,
            applications: [{ ...application, load, siteFactor }],
            plantDay: application.appliedDay + days,
          };
          const { odds, reasons } = whyOf(question);
          if (reasons.factors === null) return;
          const { calendar, warmth, rain, dose, soil, whole } = reasons.factors;
          const direct = geometric(
            odds.years.map(({ breakdownDaysAtPlanting }) => odds.demands[0] / breakdownDaysAtPlanting),
            odds.weights,
          );
          expect(whole / (direct * dose * soil)).toBeCloseTo(1, 9);
          expect((calendar * warmth * rain * dose * soil) / whole).toBeCloseTo(1, 12);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('says in words where no factors can be: harmless dose, nothing broken down yet, several parts', () => {
    const [application] = base.applications;
    const harmless = whyOf({ ...base, applications: [{ ...application, load: 0.01 }] });
    expect(harmless.reasons.noFactors).toBe('harmless dose');
    expect(harmless.odds.oddsAtPlanting).toBe(0);

    const atOnce = whyOf({ ...base, plantDay: application.appliedDay });
    expect(atOnce.reasons.noFactors).toBe('no breakdown yet');
    expect(atOnce.odds.oddsAtPlanting).toBe(1);

    const leaves = whyOf({ ...base, applications: [{ ...application, canopyFraction: 0.4 }] });
    expect(leaves.reasons.noFactors).toBe('several parts');
    expect(leaves.reasons.parts.map(({ where }) => where)).toEqual(['ground', 'leaves']);

    for (const [{ odds, reasons }, word] of [
      [harmless, 'below the harmless level'],
      [atOnce, 'nothing breaks down'],
      [leaves, 'Leaves caught part'],
    ] as const) {
      const block = whySchema.parse(whyBlock(reasons, odds, sayIn()));
      expect(block.whole).toBeNull();
      expect(block.words.join(' ')).toContain(word);
    }
  });

  it('takes each part of the dose away in turn: with all parts none is missing', () => {
    const [application] = base.applications;
    const second = { ...application, appliedDay: parseIsoDate('2010-09-10'), load: 0.5 };
    const both = whyOf({ ...base, applications: [application, second] });
    const alone = seasonOdds(climate, { ...base, applications: [application] });
    expect(both.reasons.parts).toHaveLength(2);
    const [first, other] = both.reasons.parts;
    expect(first.oddsWith).toBeLessThanOrEqual(both.odds.oddsAtPlanting);
    // One group: leaving the second out is the first by itself.
    expect(other.oddsWithout).toBe(first.oddsWith);
    expect(first.oddsWithout).toBe(other.oddsWith);
    expect(first.oddsWith).toBeGreaterThan(0);
    expect(Math.abs(first.oddsWith - alone.oddsAtPlanting)).toBeLessThan(0.05);
  });

  it('names factors in words only where they differ from 1', () => {
    const { odds, reasons } = whyOf(base);
    const { words, rain } = whySchema.parse(whyBlock(reasons, odds, sayIn()));
    const said = words.join(' ');
    expect(said).toContain(`× ${(rain ?? 0).toFixed(2)} for rain`);
    expect(said).not.toContain('full label dose');
    expect(said).toMatch(/By planting/);
  });
});
