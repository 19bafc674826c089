import { describe, expect, it } from 'vitest';
import { type FieldFacts, judgeConditions } from '../../src/analysis/labelConditions.ts';
import type { WaterSeason } from '../../src/analysis/waterWindow.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import { labelDateOf } from '../../src/model/calendar/interval.ts';
import { clauseSchema } from '../../src/schema/clauses.ts';
import fc from '../fastCheck.ts';
import { climateOfSeries, inventedSeries } from './inventedWeather.ts';

const RUNS = { numRuns: 60 };
const APPLIED = parseIsoDate('2013-06-10');

const ifNot = fc.oneof(
  fc.constantFrom('not allowed', 'bioassay', 'not stated'),
  fc.integer({ min: 0, max: 40 }).map((months) => ({ months })),
  fc.integer({ min: 0, max: 400 }).map((days) => ({ days })),
);
const minMm = fc.integer({ min: 1, max: 900 });
const kinds = [
  fc.record({
    kind: fc.constant('water'),
    minMm,
    counts: fc.constantFrom('rain', 'rain and irrigation'),
    window: fc.record({
      from: fc.constantFrom('application', '06-01', '11-15'),
      to: fc.constantFrom('planting', 'interval end', 'spring end', 'unknown', '08-31', '02-29'),
    }),
  }),
  fc.record({ kind: fc.constant('startingRain'), minMm, onDrySoilOnly: fc.boolean() }),
  fc.record({ kind: fc.constant('stormGuard'), minMm, by: fc.constantFrom('spring end', '07-15') }),
  fc.record({
    kind: fc.constant('annualRain'),
    minMm,
    counts: fc.constantFrom('rain', 'rain and irrigation'),
  }),
  fc.record({ kind: fc.constant('soilPh'), atLeast: fc.constantFrom(5, 6.2, 7) }),
  fc.record({ kind: fc.constant('organicMatter'), minPercent: fc.constantFrom(1, 2, 4) }),
  fc.record({ kind: fc.constant('soilTexture'), groups: fc.constantFrom(['coarse'], ['medium', 'fine']) }),
  fc.record({ kind: fc.constant('rate'), toGramsPerHa: fc.constantFrom(50, 90, 150) }),
  fc.record({ kind: fc.constant('tillage') }),
  fc.record({ kind: fc.constant('zone'), words: fc.constant('an invented valley') }),
  fc.record({ kind: fc.constant('bioassay'), role: fc.constantFrom('required', 'alternative') }),
];
const clause = fc
  .tuple(fc.oneof(...kinds), fc.constantFrom('interval', 'short end'), ifNot)
  .map(([one, grants, otherwise]) => clauseSchema.parse({ ...one, grants, ifNot: otherwise }));
const interval = fc.record({
  months: fc.integer({ min: 0, max: 30 }),
  days: fc.integer({ min: 0, max: 29 }),
});
const orNot = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: null });
const facts = fc.record<FieldFacts>({
  soilPh: fc.option(fc.double({ min: 4, max: 9, noNaN: true }), { nil: undefined }),
  organicMatterPercent: orNot(fc.double({ min: 0, max: 8, noNaN: true })),
  textureGroup: orNot(fc.constantFrom('coarse', 'medium', 'fine')),
  rateGramsPerHa: orNot(fc.double({ min: 1, max: 300, noNaN: true })),
  bioassay: orNot(fc.constantFrom('clean', 'injured')),
  meanAnnualRainMm: orNot(fc.double({ min: 50, max: 1500, noNaN: true })),
  yearlyIrrigationMm: fc.double({ min: 0, max: 400, noNaN: true }),
  oddsLimit: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
});
const climates = [0.02, 0.15, 0.5].map((wetShare, seed) =>
  climateOfSeries(inventedSeries({ seed: seed + 1, wetShare, wetDayMm: 4, meanTempC: 9 })),
);
const season = fc.record<WaterSeason>({
  climate: fc.constantFrom(...climates),
  firstDay: fc.constant(APPLIED),
  asOfDay: fc.option(fc.integer({ min: APPLIED, max: APPLIED + 500 }), { nil: undefined }),
  restOfSeasonRain: fc.double({ min: 0, max: 2, noNaN: true }),
  irrigation: fc.array(
    fc.record({
      day: fc.integer({ min: APPLIED, max: APPLIED + 300 }),
      mm: fc.double({ min: 0, max: 80, noNaN: true }),
    }),
    { maxLength: 4 },
  ),
  base: fc.constant({ to: 2012 }),
  plantDay: fc.integer({ min: APPLIED, max: APPLIED + 500 }),
});

describe('whatever the conditions, the weather and the field', () => {
  it('the label date is never before the interval’s end, and no further condition makes it earlier', () => {
    fc.assert(
      fc.property(
        interval,
        fc.array(clause, { minLength: 1, maxLength: 4 }),
        season,
        facts,
        (length, clauses, s, f) => {
          // a bioassay that may stand in for others is the one condition that can lift one
          const plain = clauses.filter((one) => one.kind !== 'bioassay' || one.role === 'required');
          const judged = (some: typeof clauses) =>
            judgeConditions({ interval: length, shortest: length, clauses: some }, s, f);
          const bare = labelDateOf(APPLIED, length);
          let before = judged([]).labelDay;
          expect(before).toBe(bare);
          for (let n = 1; n <= plain.length; n++) {
            const now = judged(plain.slice(0, n)).labelDay;
            expect(now).toBeGreaterThanOrEqual(before);
            before = now;
          }
          expect(judged(clauses).labelDay).toBeGreaterThanOrEqual(bare);
        },
      ),
      RUNS,
    );
  });

  it('odds lie within their interval, and a settled condition stays settled as days are added', () => {
    fc.assert(
      fc.property(
        interval,
        clause,
        season,
        facts,
        fc.integer({ min: 0, max: 200 }),
        (length, one, s, f, more) => {
          const at = (asOfDay: number | undefined) =>
            judgeConditions({ interval: length, shortest: length, clauses: [one] }, { ...s, asOfDay }, f)
              .judged[0];
          const { odds, range, state } = at(s.asOfDay);
          if (odds !== null && range !== null) {
            expect(odds).toBeGreaterThanOrEqual(range.low - 1e-12);
            expect(odds).toBeLessThanOrEqual(range.high + 1e-12);
          }
          if (state !== 'open' && s.asOfDay !== undefined) expect(at(s.asOfDay + more).state).toBe(state);
        },
      ),
      RUNS,
    );
  });
});
