import { describe, expect, it } from 'vitest';
import { msOf } from '../../src/chart/dateMs.ts';
import { ODDS_BOUNDS, ODDS_WORDS, oddsStep } from '../../src/chart/oddsScale.ts';
import { oddsSeason } from '../../src/chart/oddsSeason.ts';
import { rainMonths } from '../../src/chart/rainMonths.ts';
import { DARK_TOKENS, LIGHT_TOKENS, oddsColour } from '../../src/chart/theme.ts';
import { driestYear, yearScatter } from '../../src/chart/yearScatter.ts';
import { answer, marks, ruler } from './fixture.ts';

const shared = { tokens: LIGHT_TOKENS, description: '' };

describe('odds scale', () => {
  it('puts a bound into the step above it', () => {
    expect([0, 0.0499, 0.05, 0.1, 0.2, 0.35, 0.5, 0.75, 1].map(oddsStep)).toEqual([
      0, 0, 1, 2, 3, 4, 5, 6, 6,
    ]);
  });

  it('has a word and a colour for each step, the same colours by day and by night', () => {
    expect(ODDS_WORDS).toHaveLength(ODDS_BOUNDS.length + 1);
    expect(LIGHT_TOKENS.odds).toHaveLength(ODDS_WORDS.length);
    expect(DARK_TOKENS.odds).toEqual(LIGHT_TOKENS.odds);
    expect(oddsColour(LIGHT_TOKENS, 0.29)).toBe('#bd7e8d');
  });
});

describe('odds over the season', () => {
  const spec = oddsSeason(answer.season, { ...shared, ruler, marks, oddsLimit: 0.1 });

  it('draws every year and the odds out of twenty, as far as the ruler reaches', () => {
    const years = spec.datasets.years as { year: number; dateMs: number }[];
    expect(new Set(years.map(({ year }) => year)).size).toBe(answer.years.length);
    expect(Math.max(...years.map(({ dateMs }) => dateMs))).toBeLessThanOrEqual(ruler.toMs);
    expect(spec.datasets.odds[0]).toEqual({
      dateMs: msOf(answer.season.startDate),
      in20: answer.season.odds[0] * 20,
    });
  });

  it('marks the odds on the planting date on the curve', () => {
    const [here] = spec.datasets.here as { dateMs: number; in20: number }[];
    expect(here.dateMs).toBe(msOf(marks.plantOn));
    expect(here.in20 / 20).toBeCloseTo(answer.oddsAtPlanting ?? Number.NaN, 3);
  });

  it('marks none where the curve does not reach the planting date', () => {
    const far = oddsSeason(answer.season, {
      ...shared,
      ruler,
      marks: { ...marks, plantOn: '2040-01-01' },
      oddsLimit: 0.1,
    });
    expect(far.datasets.here).toEqual([]);
  });
});

describe('rain by month', () => {
  const months = [
    { month: '2026-08', observedMm: 25.4, normalMm: 50.8 },
    { month: '2026-09', observedMm: null, normalMm: 10 },
  ];
  const { datasets } = rainMonths(months, {
    ...shared,
    ruler,
    marks,
    rainUnit: 'in',
    rainIn: (mm) => mm / 25.4,
    season: { from: '2026-08-12', to: '2026-09-10' },
  });

  it('converts, and leaves a month without observations without a bar', () => {
    expect(datasets.observed).toMatchObject([{ month: '2026-08', observed: 1, normal: 2 }]);
    expect(datasets.normal).toHaveLength(2);
  });

  it('cuts the first and the last month to the days of the season', () => {
    const [first, last] = datasets.normal as { startMs: number; endMs: number }[];
    expect(first.startMs).toBeGreaterThan(msOf('2026-08-12'));
    expect(last.endMs).toBeLessThan(msOf('2026-09-11'));
    expect(last.startMs).toBeGreaterThan(msOf('2026-09-01'));
  });
});

describe('years', () => {
  it('are all drawn, each in its third, and the driest is named', () => {
    const { datasets } = yearScatter(answer.years, {
      ...shared,
      widthPx: 600,
      rainUnit: 'mm',
      rainIn: (mm) => mm,
      oddsLimit: 0.1,
    });
    const { dry, middle, wet } = datasets;
    expect(dry.length + middle.length + wet.length).toBe(answer.years.length);
    const driest = driestYear(answer.years);
    expect(Math.min(...answer.years.map(({ warmRainMm }) => warmRainMm))).toBe(driest?.warmRainMm);
    expect(datasets.named).toMatchObject([{ text: `${driest?.year}` }]);
  });

  it('have no driest one where there is none', () => {
    expect(driestYear([])).toBeUndefined();
  });
});
