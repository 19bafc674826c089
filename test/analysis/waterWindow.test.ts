import { describe, expect, it } from 'vitest';
import { dayReached, judgeWater, SEARCH_DAYS, type WaterSeason } from '../../src/analysis/waterWindow.ts';
import { parseIsoDate } from '../../src/calendar.ts';
import fc from '../fastCheck.ts';
import { countedClimate, laterYears, type RainRule, risingYears } from './countedYears.ts';

const APPLIED = parseIsoDate('2021-06-01');
const day = parseIsoDate;

const seasonOf = (rain: RainRule, over: Partial<WaterSeason> = {}, missing: string[] = []): WaterSeason => ({
  climate: countedClimate(rain, missing),
  firstDay: APPLIED,
  restOfSeasonRain: 1,
  irrigation: [],
  base: { to: 2020 },
  plantDay: day('2021-09-15'),
  ...over,
});
const summer = { fromDay: APPLIED, toDay: day('2021-08-31'), withIrrigation: false };

describe('a sum of water over a window', () => {
  it('planned is open, and its odds are the share of the past years that reach it, with the Wilson interval', () => {
    const judged = judgeWater(seasonOf(risingYears), summer, 105);
    expect(judged).toMatchObject({ state: 'open', amountMm: null, odds: 10 / 20 });
    expect(judged.range?.years).toBe(20);
    // 10 of 20: the score interval as tables give it, 0.299 to 0.701
    expect(judged.range?.low).toBeCloseTo(0.2993, 4);
    expect(judged.range?.high).toBeCloseTo(0.7007, 4);
  });

  it('counts a sum that is just reached', () => {
    expect(judgeWater(seasonOf(risingYears), summer, 110).odds).toBe(10 / 20);
    expect(judgeWater(seasonOf(risingYears), summer, 110.1).odds).toBe(9 / 20);
  });

  it('counts an inch that fell in ten readings of a tenth, whose sum in binary falls short of it', () => {
    const tenths: RainRule = (monthDay) => (monthDay > '07-09' && monthDay <= '07-19' ? 2.54 : 0);
    const season = seasonOf(tenths, { asOfDay: day('2021-08-31') });
    expect(judgeWater(season, summer, 25.4)).toMatchObject({ state: 'met' });
    expect(judgeWater(season, summer, 25.5)).toMatchObject({ state: 'not met' });
    expect(dayReached(season, summer, 25.4, 0.1).observedDay).toBe(day('2021-07-19'));
  });

  it('takes observed days as they were and each year’s own rain after them', () => {
    const early: RainRule = (date, year) =>
      risingYears(date, year) + (date === '06-10' && year === 2021 ? 40 : 0);
    const judged = judgeWater(seasonOf(early, { asOfDay: day('2021-07-05') }), summer, 105);
    // 40 are there; 65 more came in 2007 to 2020
    expect(judged).toMatchObject({ state: 'open', amountMm: 40, odds: 14 / 20 });
  });

  it('is met once enough is observed, and not met once its last day is over: no years are asked then', () => {
    const season = seasonOf(risingYears, { asOfDay: day('2021-07-10') });
    expect(judgeWater(season, summer, 105)).toEqual({ state: 'met', amountMm: 210, odds: 1, range: null });
    const over = seasonOf(risingYears, { asOfDay: day('2021-08-31') });
    expect(judgeWater(over, summer, 300)).toEqual({ state: 'not met', amountMm: 210, odds: 0, range: null });
    const eve = seasonOf(risingYears, { asOfDay: day('2021-08-30') });
    expect(judgeWater(eve, summer, 300)).toMatchObject({ state: 'open', odds: 0 });
  });

  it('stays open over a gap in the observations that could have held it', () => {
    const gap = seasonOf(risingYears, { asOfDay: day('2021-09-01') }, ['2021-07-10']);
    expect(judgeWater(gap, summer, 105)).toMatchObject({ state: 'open', amountMm: 0, odds: 10 / 20 });
    expect(judgeWater(gap, summer, 5)).toMatchObject({ state: 'met', odds: 1 });
    expect(judgeWater(gap, summer, 205)).toMatchObject({ state: 'not met', odds: 0 });
  });

  it('counts irrigation only where it is asked for', () => {
    const watered = seasonOf(risingYears, { irrigation: [{ day: day('2021-06-20'), mm: 30 }] });
    expect(judgeWater(watered, summer, 105).odds).toBe(10 / 20);
    // 75 more came in 2008 to 2020
    expect(judgeWater(watered, { ...summer, withIrrigation: true }, 105).odds).toBe(13 / 20);
    const given = { ...watered, asOfDay: day('2021-06-30') };
    expect(judgeWater(given, { ...summer, withIrrigation: true }, 105).amountMm).toBe(30);
    expect(judgeWater(given, summer, 105).amountMm).toBe(0);
  });

  it('comes to the same, to the last bit, whether each day is asked for water given or none is', () => {
    const rain = fc.array(fc.integer({ min: 0, max: 400 }), { minLength: 30, maxLength: 30 });
    const offset = fc.integer({ min: -20, max: 140 });
    fc.assert(
      fc.property(
        rain,
        offset,
        offset,
        offset,
        fc.integer({ min: 0, max: 900 }),
        (tenths, a, b, seen, mm) => {
          const rule: RainRule = (date, year) => tenths[(Number(date.slice(3)) + year) % 30] / 10;
          const window = { fromDay: APPLIED + a, toDay: APPLIED + a + Math.abs(b), withIrrigation: true };
          const season = seasonOf(rule, { asOfDay: APPLIED + seen, restOfSeasonRain: 0.7 }, ['2021-06-20']);
          const given = { ...season, irrigation: [{ day: APPLIED - 300, mm: 5 }] };
          expect(judgeWater(season, window, mm)).toEqual(judgeWater(given, window, mm));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('scales the rain to come, and leaves what was observed alone', () => {
    expect(judgeWater(seasonOf(risingYears, { restOfSeasonRain: 0.5 }), summer, 95).odds).toBe(2 / 20);
    const seen = seasonOf(risingYears, { restOfSeasonRain: 0.5, asOfDay: day('2021-07-10') });
    expect(judgeWater(seen, summer, 205).state).toBe('met');
  });

  it('weighs the years by an outlook', () => {
    const wet = seasonOf(risingYears, { outlook: { below: 0, near: 0, above: 1 } });
    expect(judgeWater(wet, summer, 105).odds).toBe(1);
  });

  it('gives no odds from fewer than ten years, and still judges what is observed', () => {
    const few = seasonOf(risingYears, { base: { from: 2012, to: 2020 } });
    expect(judgeWater(few, summer, 105)).toEqual({ state: 'open', amountMm: null, odds: null, range: null });
    expect(judgeWater({ ...few, asOfDay: day('2021-08-31') }, summer, 300).state).toBe('not met');
    expect(judgeWater({ ...few, asOfDay: day('2021-08-31') }, summer, 100).state).toBe('met');
  });

  it('is not met where the window holds no day', () => {
    expect(judgeWater(seasonOf(risingYears), { ...summer, toDay: APPLIED - 1 }, 1).state).toBe('not met');
  });
});

describe('the day on which water adds up', () => {
  const from = { fromDay: APPLIED, withIrrigation: false };

  it('is sure enough once all but the accepted share of the years have it', () => {
    const reached = dayReached(seasonOf(laterYears), from, 25, 0.1);
    expect(reached.observedDay).toBeNull();
    expect(reached.safeDay).toBe(day('2021-07-18'));
    expect(reached.by(day('2021-07-13')).odds).toBe(13 / 20);
    expect(dayReached(seasonOf(laterYears), from, 25, 0.5).safeDay).toBe(day('2021-07-10'));
  });

  it('is the observed one where it has come', () => {
    const seen = dayReached(seasonOf(laterYears, { asOfDay: day('2021-07-25') }), from, 25, 0.1);
    expect(seen).toMatchObject({ observedDay: day('2021-07-21'), safeDay: day('2021-07-21') });
    expect([seen.by(day('2021-07-20')).odds, seen.by(day('2021-07-21')).odds]).toEqual([0, 1]);
  });

  it('loses the rain of past years that the season has gone without', () => {
    const dry = dayReached(seasonOf(laterYears, { asOfDay: day('2021-07-05') }), from, 25, 0.1);
    // the rains of 1 to 5 July are over without any; 6 to 13 July are left
    expect(dry.by(day('2021-07-13')).odds).toBe(8 / 20);
  });

  it('leaves years out whose record has ended, while ten are left', () => {
    // two rains are needed, so a year's sum is there in its next July; 2022 ends the record
    const twice = dayReached(seasonOf(laterYears, { base: {} }), from, 55, 0.1);
    const next = twice.by(day('2022-07-31'));
    expect(next.odds).toBe(1);
    expect(next.range?.years).toBe(20);
    // three springs on, 2020 has run out too; from 2011 on that leaves nine
    const spring = day('2024-05-31');
    const thrice = (firstYear: number) =>
      dayReached(seasonOf(laterYears, { base: { from: firstYear } }), from, 85, 0.1);
    expect(thrice(2001).by(spring).range?.years).toBe(19);
    expect(thrice(2010).by(spring).range?.years).toBe(10);
    expect(thrice(2011).by(spring)).toEqual({ odds: null, range: null });
  });

  it('is nowhere where it never rains', () => {
    expect(
      dayReached(
        seasonOf(() => 0),
        from,
        1,
        0.1,
      ).safeDay,
    ).toBeNull();
    expect(SEARCH_DAYS).toBeGreaterThan(3 * 365);
  });
});
