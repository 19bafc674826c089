import { describe, expect, it } from 'vitest';
import {
  type ConditionedInterval,
  type FieldFacts,
  judgeConditions,
} from '../../src/analysis/labelConditions.ts';
import type { WaterSeason } from '../../src/analysis/waterWindow.ts';
import { isoDateOf, parseIsoDate } from '../../src/calendar.ts';
import { type Clause, clauseSchema } from '../../src/schema/clauses.ts';
import { countedClimate, laterYears, type RainRule, risingYears } from './countedYears.ts';

const day = parseIsoDate;
const months = (n: number) => ({ months: n, days: 0 });
const clauseOf = (clause: object): Clause => clauseSchema.parse(clause);

const NOTHING_KNOWN: FieldFacts = {
  organicMatterPercent: null,
  textureGroup: null,
  rateGramsPerHa: null,
  bioassay: null,
  meanAnnualRainMm: null,
  yearlyIrrigationMm: 0,
  oddsLimit: 0.1,
};

interface Asked {
  readonly rain?: RainRule;
  readonly season?: Partial<WaterSeason>;
  readonly facts?: Partial<FieldFacts>;
  readonly line?: Partial<ConditionedInterval>;
}

/** Sprayed on 1 June 2021, 9 months (3 at the short end), planted on 10 March 2022. */
function judge(clauses: object[], { rain = risingYears, season, facts, line }: Asked = {}) {
  const label = judgeConditions(
    { interval: months(9), shortest: months(3), clauses: clauses.map(clauseOf), ...line },
    {
      climate: countedClimate(rain),
      firstDay: day('2021-06-01'),
      restOfSeasonRain: 1,
      irrigation: [],
      base: { to: 2020 },
      plantDay: day('2022-03-10'),
      ...season,
    },
    { ...NOTHING_KNOWN, ...facts },
  );
  return { ...label, labelDate: isoDateOf(label.labelDay), first: label.judged[0] };
}

const water = (over: object = {}) => ({
  kind: 'water',
  minMm: 105,
  counts: 'rain',
  window: { from: 'application', to: 'interval end' },
  ifNot: { months: 18 },
  ...over,
});

describe('water within the interval', () => {
  it('leaves the longer interval while it is open, and after it has failed', () => {
    const open = judge([water()]);
    expect(open.first).toMatchObject({ state: 'open', odds: 0.5, requiredMm: 105, byDay: day('2022-02-28') });
    expect(open.labelDate).toBe('2022-12-01');
    const failed = judge([water({ minMm: 300 })], { season: { asOfDay: day('2022-02-28') } });
    expect(failed.first.state).toBe('not met');
    expect(failed.labelDate).toBe('2022-12-01');
  });

  it('gives the interval once it is met', () => {
    const met = judge([water()], { season: { asOfDay: day('2021-07-10') } });
    expect(met.first).toMatchObject({ state: 'met', amountMm: 210 });
    expect(met.labelDate).toBe('2022-03-01');
  });

  it('never takes the short end, though it says when that is met', () => {
    const short = judge([water({ grants: 'short end' })], { season: { asOfDay: day('2021-08-31') } });
    expect(short.first).toMatchObject({ state: 'met', intervalIfMet: months(3), byDay: day('2021-08-31') });
    expect(short.labelDate).toBe('2022-03-01');
  });

  it('has days of the calendar as its ends where the label names them', () => {
    const named = judge([water({ window: { from: '07-11', to: '08-31' } })], {
      season: { asOfDay: day('2021-12-01') },
    });
    expect(named.first).toMatchObject({ state: 'not met', amountMm: 0, byDay: day('2021-08-31') });
    const late = judge([water({ window: { from: '07-01', to: '08-31' } })], {
      season: { firstDay: day('2021-09-10'), plantDay: day('2022-05-10') },
    });
    expect(late.first).toMatchObject({ byDay: day('2022-08-31'), endsAfterPlanting: true });
    const spring = judge([water({ window: { from: 'application', to: 'spring end' } })]);
    expect(spring.first.byDay).toBe(day('2022-05-31'));
    const unread = judge([water({ window: { from: 'application', to: 'unknown' } })]);
    expect(unread.first.byDay).toBe(day('2021-08-31'));
  });
});

describe('water that the crop must wait for', () => {
  const waiting = (minMm: number) =>
    water({ minMm, window: { from: 'application', to: 'planting' }, ifNot: 'not allowed' });

  it('holds the label date back to the day after it is sure enough', () => {
    // 18 of 20 years bring 30 mm by 10 July; 2001 and 2002 only in the next year
    const sure = judge([waiting(30)], { line: { interval: { months: 0, days: 14 } } });
    expect(sure.first).toMatchObject({
      state: 'open',
      waitsUntilDay: day('2021-07-11'),
      waitsForever: false,
    });
    expect(sure.labelDate).toBe('2021-07-11');
    expect(judge([waiting(30)]).labelDate).toBe('2022-03-01');
  });

  it('takes the observed day where it has come', () => {
    const come = judge([waiting(30)], {
      line: { interval: { months: 0, days: 14 } },
      season: { asOfDay: day('2021-07-20') },
    });
    expect(come.first.state).toBe('met');
    expect(come.labelDate).toBe('2021-07-11');
  });

  it('ends at the end of the search, and says so, where it is never sure', () => {
    const never = judge([waiting(5000)]);
    expect(never.first.waitsForever).toBe(true);
    expect(never.labelDate).toBe('2024-06-02');
  });
});

describe('a rain that starts the interval', () => {
  const start = { kind: 'startingRain', minMm: 25, onDrySoilOnly: false, ifNot: 'not allowed' };
  const asked = (plantOn: string, asOf?: string) =>
    judge([start], {
      rain: laterYears,
      line: { interval: { months: 0, days: 28 } },
      season: { plantDay: day(plantOn), ...(asOf ? { asOfDay: day(asOf) } : {}) },
    });

  it('counts the interval from the day by which nine years of ten have had it', () => {
    const planned = asked('2021-08-10');
    expect(planned.labelDate).toBe('2021-08-15');
    // 28 days before 10 August is 13 July: 13 of 20 years
    expect(planned.first).toMatchObject({ state: 'open', byDay: day('2021-07-13'), odds: 13 / 20 });
  });

  it('counts it from the observed rain, and says whether that leaves time before planting', () => {
    expect(asked('2021-08-10', '2021-07-25')).toMatchObject({ labelDate: '2021-08-18' });
    expect(asked('2021-08-10', '2021-07-25').first.state).toBe('not met');
    expect(asked('2021-08-20', '2021-07-25').first.state).toBe('met');
    expect(asked('2021-08-10', '2021-07-14').first.state).toBe('not met');
  });

  it('cannot be there before a planting date within the interval', () => {
    expect(asked('2021-06-20').first).toMatchObject({ state: 'not met', byDay: null });
  });

  it('waits without end where it never rains', () => {
    const dry = judge([start], { rain: () => 0, line: { interval: { months: 0, days: 28 } } });
    expect(dry.first.waitsForever).toBe(true);
    expect(dry.labelDate).toBe('2024-06-29');
  });
});

describe('a guard against storms', () => {
  const guard = { kind: 'stormGuard', minMm: 105, by: 'spring end', ifNot: 'not stated' };
  it('asks for its rain by the end of spring, and irrigation is no rain', () => {
    const late: RainRule = (date, year) => (date === '06-15' ? 20 * (year - 2000) : 0);
    const { first, labelDate } = judge([guard], {
      rain: late,
      season: {
        firstDay: day('2021-06-20'),
        plantDay: day('2022-08-01'),
        irrigation: [{ day: day('2021-07-01'), mm: 200 }],
      },
    });
    expect(first).toMatchObject({
      state: 'open',
      odds: 0,
      byDay: day('2022-05-31'),
      endsAfterPlanting: false,
    });
    expect(labelDate).toBe('2022-03-20');
    expect(judge([guard]).first.odds).toBe(0.5);
    expect(judge([{ ...guard, by: '07-09' }]).first.odds).toBe(0);
  });
});

describe('what the field settles', () => {
  const longer = { ifNot: { months: 18 } };
  const stateOf = (clause: object, facts: Partial<FieldFacts> = {}) =>
    judge([{ ...clause, ...longer }], { facts }).first;

  it('is open while nothing is said, and then the longer interval counts', () => {
    for (const clause of [
      { kind: 'soilPh', below: 7 },
      { kind: 'organicMatter', minPercent: 2 },
      { kind: 'soilTexture', groups: ['fine'] },
      { kind: 'rate', toGramsPerHa: 90 },
      { kind: 'annualRain', minMm: 500, counts: 'rain' },
      { kind: 'tillage' },
      { kind: 'zone', words: 'irrigated' },
      { kind: 'bioassay', role: 'required' },
    ]) {
      const { first, labelDate } = judge([{ ...clause, ...longer }]);
      expect({ kind: clause.kind, state: first.state, labelDate }).toEqual({
        kind: clause.kind,
        state: 'open',
        labelDate: '2022-12-01',
      });
    }
  });

  it('is soil pH within its band, the upper end left out', () => {
    const band = { kind: 'soilPh', atLeast: 5.6, below: 8.6 };
    expect(stateOf(band, { soilPh: 5.6 })).toMatchObject({ state: 'met', fieldValue: 5.6 });
    expect(stateOf(band, { soilPh: 8.6 }).state).toBe('not met');
    expect(stateOf(band, { soilPh: 5.5 }).state).toBe('not met');
  });

  it('is organic matter, where a given 2 % is given', () => {
    const least = { kind: 'organicMatter', minPercent: 2 };
    expect(stateOf(least, { organicMatterPercent: 2 })).toMatchObject({ state: 'met', fieldValue: 2 });
    expect(stateOf(least, { organicMatterPercent: 1.9 }).state).toBe('not met');
  });

  it('is the texture, coarse, medium or fine', () => {
    const notCoarse = { kind: 'soilTexture', groups: ['medium', 'fine'] };
    const on = (textureGroup: 'coarse' | 'medium' | 'fine') => stateOf(notCoarse, { textureGroup }).state;
    expect([on('coarse'), on('medium'), on('fine')]).toEqual(['not met', 'met', 'met']);
    expect(() => clauseOf({ ...notCoarse, groups: [], ...longer })).toThrow();
    expect(() => clauseOf({ ...notCoarse, groups: ['fine', 'fine'], ...longer })).toThrow(/twice/);
  });

  it('is the rate, both ends included', () => {
    const band = { kind: 'rate', fromGramsPerHa: 90, toGramsPerHa: 150 };
    const at = (rateGramsPerHa: number) => stateOf(band, { rateGramsPerHa }).state;
    expect([89.9, 90, 150, 150.1].map(at)).toEqual(['not met', 'met', 'met', 'not met']);
  });

  it('is the rain of a mean year, with irrigation where the label counts it', () => {
    const rain = { kind: 'annualRain', minMm: 500, counts: 'rain' };
    const facts = { meanAnnualRainMm: 450, yearlyIrrigationMm: 60 };
    expect(stateOf(rain, facts)).toMatchObject({ state: 'not met', amountMm: 450, requiredMm: 500 });
    expect(stateOf({ ...rain, counts: 'rain and irrigation' }, facts)).toMatchObject({
      state: 'met',
      amountMm: 510,
    });
  });
});

describe('a field bioassay', () => {
  const required = { kind: 'bioassay', role: 'required', ifNot: 'not allowed' };
  const standIn = { kind: 'bioassay', role: 'alternative', ifNot: 'not stated' };

  it('that is required is open, met by a clean one and failed by an injured one', () => {
    expect(judge([required]).first.state).toBe('open');
    expect(judge([required], { facts: { bioassay: 'clean' } }).first.state).toBe('met');
    expect(judge([required], { facts: { bioassay: 'injured' } }).first.state).toBe('not met');
  });

  it('that may stand in settles the other conditions when it is clean, and nothing when it is not', () => {
    expect(judge([water(), standIn]).labelDate).toBe('2022-12-01');
    expect(judge([water(), standIn], { facts: { bioassay: 'injured' } }).labelDate).toBe('2022-12-01');
    expect(judge([water(), standIn], { facts: { bioassay: 'clean' } }).labelDate).toBe('2022-03-01');
    expect(judge([water()], { facts: { bioassay: 'clean' } }).labelDate).toBe('2022-12-01');
  });
});

describe('several conditions', () => {
  it('hold together: the longest of what the open and the failed ones lead to counts', () => {
    const ph = { kind: 'soilPh', atLeast: 6.2, ifNot: { months: 28 } };
    expect(judge([water(), ph]).labelDate).toBe('2023-10-01');
    expect(judge([water(), ph], { facts: { soilPh: 6.5 } }).labelDate).toBe('2022-12-01');
    const season = { asOfDay: day('2021-07-31') };
    expect(judge([water(), ph], { season }).labelDate).toBe('2023-10-01');
    expect(judge([water(), ph], { season, facts: { soilPh: 6.5 } }).labelDate).toBe('2022-03-01');
  });

  it('count half months as fifteen days', () => {
    expect(judge([water({ ifNot: { months: 10.5 } })]).interval).toEqual({ months: 10, days: 15 });
  });

  it('of which one leads to less than the interval leave the interval', () => {
    expect(judge([water({ ifNot: { days: 30 } })]).labelDate).toBe('2022-03-01');
  });
});
