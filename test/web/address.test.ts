import { describe, expect, it } from 'vitest';
import { demoQuestion } from '../../src/demo/demoQuestion.ts';
import { INTERCEPTION_CROPS } from '../../src/schema/codes.ts';
import { type QuestionInput, questionSchema } from '../../src/schema/question.ts';
import { TEXTURE_CLASSES } from '../../src/schema/soil.ts';
import { decodeAddress, encodeAddress } from '../../web/src/question/address.ts';
import fc from '../fastCheck.ts';

const day = fc
  .integer({ min: 0, max: 40_000 })
  .map((days) => new Date(days * 86_400_000).toISOString().slice(0, 10));
const name = fc.string({ minLength: 1, maxLength: 20 }).filter((text) => text.trim() === text);
/** Numbers of a range; a minus zero is no other value than zero. */
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

/** Soil tests and bioassays as the form makes them. */
const findings = fc.oneof(
  fc.record({ kind: fc.constant('bioassay' as const), on: day, injured: fc.boolean() }),
  fc.record({ kind: fc.constant('soil test' as const), on: day, fractionLeft: within(0.001, 20) }),
  fc.record({
    ...{ kind: fc.constant('soil test' as const), on: day },
    ...{ concentrationMgPerKg: within(0.001, 1000), depthCm: within(1, 60) },
  }),
  fc.record({
    ...{ kind: fc.constant('soil test' as const), on: day, detected: fc.constant(false) },
    ...{ detectionLimit: within(0.001, 1000), depthCm: maybe(within(1, 60)) },
  }),
);

const growthStage = fc.record({
  plants: fc.constantFrom(...INTERCEPTION_CROPS),
  bbch: fc.integer({ min: 0, max: 99 }),
  establishedTurf: maybe(fc.boolean()),
});
const treatments = fc.record(
  {
    ...{ appliedOn: day, residual: name, labelEntry: fc.constantFrom('north-shed-1', '2026-label') },
    ...{ rateFraction: within(0.01, 10), rateGramsPerHa: within(0.01, 2000), overlapFactor: within(1, 5) },
    ...{ canopyFraction: within(0, 1), growthStage, interval: fc.constantFrom('9 months', '0') },
    halfLifeDays: within(0.1, 5000),
  },
  { requiredKeys: ['appliedOn', 'residual'] },
);

const questions: fc.Arbitrary<QuestionInput> = fc.record({
  station: name,
  appliedOn: day,
  residual: name,
  crop: name,
  plantOn: day,
  soilClass: maybe(fc.constantFrom(...TEXTURE_CLASSES)),
  interval: maybe(fc.constantFrom('9 months', '1 month 15 days', '0', '30 d')),
  rateFraction: maybe(within(0.01, 10)),
  oddsLimit: maybe(within(0.001, 0.999)),
  coverFraction: maybe(within(0, 1)),
  soilPh: maybe(within(3, 11)),
  asOf: maybe(day),
  country: maybe(fc.constantFrom('US' as const, 'CA' as const)),
  temperatureStation: maybe(name),
  fillFromNeighbours: maybe(fc.boolean()),
  gauge: maybe(fc.array(fc.record({ date: day, rainMm: within(0, 200) }), { maxLength: 4 })),
  irrigation: maybe(fc.array(fc.record({ date: day, mm: within(0, 200) }), { maxLength: 4 })),
  evidence: maybe(fc.array(findings, { maxLength: 4 })),
  growthStage: maybe(growthStage),
  otherTreatments: maybe(fc.array(treatments, { maxLength: 3 })),
  zones: maybe(fc.array(fc.record({ name, overlapFactor: within(1, 5) }), { maxLength: 3 })),
  standUse: maybe(fc.constantFrom('harvested' as const, 'grazed' as const, 'cover only' as const)),
  labelEntry: maybe(fc.constantFrom('north-shed-1', '2026-label')),
  baseFrom: maybe(fc.integer({ min: 1700, max: 2200 })),
  halfLifeDays: maybe(within(0.1, 5000)),
  elevationM: maybe(within(-400, 6000)),
  outlook: maybe(
    fc.record({ belowPercent: within(0, 100), nearPercent: within(0, 100), abovePercent: within(0, 100) }),
  ),
  assume: maybe(
    fc.record({
      q10: maybe(within(1, 6)),
      soilSpread: maybe(within(0.01, 2)),
      moistureResponse: fc.constantFrom('dryness' as const, 'walker' as const),
    }),
  ),
});

describe('address', () => {
  it('holds the whole question: what it was made from means the same when read back', () => {
    fc.assert(
      fc.property(questions, fc.constantFrom('us' as const, 'metric' as const), (question, units) => {
        const read = decodeAddress(encodeAddress(question, units));
        expect(questionSchema.parse(read.question)).toEqual(questionSchema.parse(question));
        expect(read.units ?? 'us').toBe(units);
        expect(read.problem).toBeNull();
      }),
    );
  });

  it('is readable and says nothing that is a default', () => {
    const address = encodeAddress(
      { ...demoQuestion, overlapFactor: 1, assume: { soilSpread: 0.35, q10: 3 } },
      'metric',
    );
    expect(address).toMatch(/^\?v=1&/);
    expect(address).toContain(`residual=${demoQuestion.residual}`);
    expect(address).toContain('assume.q10=3');
    expect(address).toMatch(/&u=metric$/);
    for (const silent of ['overlapFactor', 'oddsLimit', 'soilSpread', 'undefined']) {
      expect(address).not.toContain(silent);
    }
  });

  it('asks no question when empty or when it holds units alone', () => {
    expect(decodeAddress('')).toEqual({ question: null, units: null, problem: null });
    expect(decodeAddress('?u=metric')).toEqual({ question: null, units: 'metric', problem: null });
    expect(decodeAddress('?u=furlongs').units).toBeNull();
  });

  it('of another version is not read, and says so', () => {
    const { question, problem } = decodeAddress('?v=2&crop=lentil');
    expect(question).toBeNull();
    expect(problem).toContain('version 2');
  });

  it('names keys that it does not know and uses the rest', () => {
    const { question, problem } = decodeAddress('?v=1&crop=lentil&colour=red');
    expect(question).toEqual({ crop: 'lentil' });
    expect(problem).toContain('“colour”');
  });

  it('leaves out dates that are none, and names them', () => {
    for (const plantOn of ['someday', '2027-02-30', '2027-5-1', '']) {
      const { question, problem } = decodeAddress(`?crop=lentil&plantOn=${plantOn}`);
      expect(question).toEqual({ crop: 'lentil' });
      expect(problem).toContain(`plantOn, “${plantOn}”, is no date`);
    }
    expect(decodeAddress('?plantOn=2028-02-29')).toMatchObject({
      question: { plantOn: '2028-02-29' },
      problem: null,
    });
  });

  it('passes on what is no number, for the server to refuse', () => {
    expect(decodeAddress('?rateFraction=lots&soilPh=').question).toEqual({
      rateFraction: 'lots',
      soilPh: '',
    });
  });

  it('keeps a finding whose figure is still to come, and one that it cannot read, for the server to refuse', () => {
    const evidence = [
      { kind: 'soil test', on: '2026-09-20' },
      { kind: 'soil test', on: '2026-09-20', detected: false, depthCm: 15 },
    ] as const;
    const address = encodeAddress({ ...demoQuestion, evidence: [...evidence] }, 'us');
    expect(address).toContain('evidence=soil-test:2026-09-20,soil-test:2026-09-20:none:depth=15');
    expect(decodeAddress(address).question?.evidence).toEqual(evidence);
    expect(decodeAddress('?evidence=tea-leaves:2026-09-20:bitter=1').question?.evidence).toEqual([
      { kind: 'tea leaves', on: '2026-09-20', bitter: 1 },
    ]);
    expect(decodeAddress('?evidence=bioassay:2026-09-20:maybe').question?.evidence).toEqual([
      { kind: 'bioassay', on: '2026-09-20', injured: 'maybe' },
    ]);
  });

  it('says other treatments and zones so that they can be read, one key for each', () => {
    const address = encodeAddress(
      {
        ...demoQuestion,
        otherTreatments: [
          { appliedOn: '2026-05-01', residual: '2,4-D', rateFraction: 0.5, interval: '9 months' },
          { appliedOn: '2026-06-01', labelEntry: 'shed' },
        ],
        zones: [{ name: 'turn rows', overlapFactor: 2 }],
      },
      'us',
    );
    expect(address).toContain(
      '&also=2026-05-01:2,4-D:rate=0.5:interval=9+months&also=2026-06-01::label=shed',
    );
    expect(address).toContain('&zone=turn+rows:2');
    expect(decodeAddress('?also=someday:100%:rate=much').question?.otherTreatments).toEqual([
      { appliedOn: 'someday', residual: '100%', rateFraction: 'much' },
    ]);
  });

  it('keeps names made of digits as text', () => {
    expect(decodeAddress('?station=241044').question).toEqual({ station: '241044' });
  });
});
