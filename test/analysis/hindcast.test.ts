import { describe, expect, it } from 'vitest';
import { harmedSoils, hindcastYear, hindcastYears } from '../../src/analysis/hindcast.ts';
import { hindcastScores } from '../../src/analysis/hindcastScores.ts';
import { seasonOdds } from '../../src/analysis/seasonOdds.ts';
import { dayNumberOf, parseIsoDate } from '../../src/calendar.ts';
import { brierScore } from '../../src/model/score/brierScore.ts';
import { plainApplication, plainQuestion } from '../cases/seasonOf.ts';
import { climateOfSeries, inventedSeries } from './inventedWeather.ts';

const series = inventedSeries({ seed: 11, wetShare: 0.2, wetDayMm: 5, meanTempC: 9 });
const climate = climateOfSeries(series);
const LEADS = [300, 180, 60];
const question = {
  ...plainQuestion,
  base: {},
  applications: [{ ...plainApplication, interval: { months: 8, days: 0 } }],
};

/** The same weather with no rain from a day on, for a number of days. */
function dryFrom(day: number, days: number) {
  const rainMm = series.rainMm.slice();
  rainMm.fill(0, day - series.firstDay, day - series.firstDay + days);
  return climateOfSeries({ ...series, rainMm });
}

describe('a past year looked back on', () => {
  it('has every year whose window the record holds', () => {
    expect(hindcastYears(climate, question).map(({ year }) => year)).toEqual(
      Array.from({ length: 15 }, (_, index) => 2000 + index),
    );
  });

  it('gives the odds that a question about that year as of the day would give', () => {
    const { odds } = hindcastYear(climate, question, 2008, LEADS);
    const applied = parseIsoDate('2008-08-10');
    const plantDay = parseIsoDate('2009-05-10');
    const applications = [{ ...question.applications[0], appliedDay: applied }];
    const asked = LEADS.map(
      (days) =>
        seasonOdds(climate, { ...question, applications, plantDay, asOfDay: plantDay - days }).oddsAtPlanting,
    );
    expect(odds[0]).toBeCloseTo(asked[0], 12);
    expect(odds[1]).toBeCloseTo(asked[1], 12);
    expect(odds[2]).toBeCloseTo(asked[2], 12);
    expect(new Set(odds).size).toBe(3);
  });

  it('does not know what came after the day it speaks on, though the outcome does', () => {
    const from = dayNumberOf(2009, 3, 20);
    const before = hindcastYear(climate, question, 2008, [60]);
    const after = hindcastYear(dryFrom(from, 51), question, 2008, [60]);
    expect(after.odds[0]).toBe(before.odds[0]);
    expect(after.probability).toBeGreaterThan(before.probability);
  });

  it('knows what came before it', () => {
    const before = hindcastYear(climate, question, 2008, [60]);
    const after = hindcastYear(dryFrom(dayNumberOf(2008, 8, 20), 60), question, 2008, [60]);
    expect(after.odds[0]).toBeGreaterThan(before.odds[0]);
  });

  it('counts the soils that are slower than the share', () => {
    expect([0, 0.02, 0.03, 0.29, 0.5, 0.99, 1].map(harmedSoils)).toEqual([0, 0, 1, 6, 10, 20, 20]);
  });
});

describe('scores of hindcasts', () => {
  const years = hindcastYears(climate, question).map(({ year }) =>
    hindcastYear(climate, question, year, LEADS),
  );

  it('are the Brier score of all soils one by one', () => {
    const probabilities = years.flatMap(({ odds }) => Array.from({ length: 20 }, () => odds[1]));
    const outcomes = years.flatMap(({ harmed }) =>
      Array.from({ length: 20 }, (_, soil) => (soil < harmed ? 1 : 0)),
    );
    const { brier, baseRate, skill } = hindcastScores(years, [1]);
    expect(brier).toBeCloseTo(brierScore(probabilities, outcomes), 12);
    expect(baseRate).toBeCloseTo(outcomes.filter((one) => one === 1).length / outcomes.length, 12);
    expect(skill).toBeCloseTo(1 - brier / (baseRate * (1 - baseRate)), 12);
  });

  it('come out best where the weather is known', () => {
    for (const lead of [0, 1, 2]) {
      const { brier, brierWithWeatherKnown } = hindcastScores(years, [lead]);
      expect(brierWithWeatherKnown).toBeLessThan(brier);
    }
  });

  it('count each forecast once in a band, and each year once for its interval', () => {
    const { bins } = hindcastScores(years, [0, 1, 2]);
    expect(bins.reduce((sum, { forecasts }) => sum + forecasts, 0)).toBe(45);
    for (const bin of bins) {
      expect(bin.meanOdds).toBeGreaterThanOrEqual(bin.from);
      expect(bin.meanOdds).toBeLessThanOrEqual(bin.to);
      expect(bin.years).toBeLessThanOrEqual(Math.min(15, bin.forecasts));
      expect(bin.low).toBeLessThanOrEqual(bin.observed);
      expect(bin.high).toBeGreaterThanOrEqual(bin.observed);
    }
  });

  it('have no skill to tell where harm never came', () => {
    const never = years.map((year) => ({ ...year, harmed: 0 }));
    expect(hindcastScores(never, [0]).skill).toBeNull();
  });
});
