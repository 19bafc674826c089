import { describe, expect, it } from 'vitest';
import { msOf } from '../../src/chart/dateMs.ts';
import { pileDots } from '../../src/chart/pileDots.ts';
import { dotCounts, dotRows, quantileDots } from '../../src/chart/quantileDots.ts';
import { LIGHT_TOKENS } from '../../src/chart/theme.ts';
import { answer, marks, ruler } from './fixture.ts';

const rows = dotRows(answer.season);
const draw = (plantOn: string, from = rows) =>
  quantileDots(from, {
    tokens: LIGHT_TOKENS,
    description: '',
    ruler,
    marks: { ...marks, plantOn },
    oddsAtPlanting: 0.25,
  });

describe('quantile dots', () => {
  it('count as many dots after a date as the odds on it say, of twenty', () => {
    const { odds, startDate } = answer.season;
    for (let day = 1; day < odds.length; day++) {
      const date = new Date(msOf(startDate) + day * 86_400_000).toISOString().slice(0, 10);
      const after = rows.filter((row) => dotCounts(row, date)).length;
      // The odds of the fixture never rise again by more than its rounding.
      expect(Math.abs(after - odds[day] * 20)).toBeLessThanOrEqual(0.51);
    }
  });

  it('fill the dots after the marker and leave the others open', () => {
    const dots = draw(marks.plantOn).datasets.dots as { date: string; fill: string }[];
    const filled = dots.filter(({ fill }) => fill !== LIGHT_TOKENS.sheet);
    expect(filled.map(({ date }) => date)).toEqual(
      rows.filter((row) => dotCounts(row, marks.plantOn)).map(({ date }) => date),
    );
    expect(filled.length).toBeGreaterThan(0);
    expect(filled.length).toBeLessThan(20);
  });

  it('stand past the search at the right end and are named there', () => {
    const late = rows.map((row) => (row.dot > 17 ? { ...row, date: null } : row));
    const { datasets } = draw(marks.plantOn, late);
    const atEnd = (datasets.dots as { dateMs: number }[]).filter(({ dateMs }) => dateMs === ruler.toMs);
    expect(atEnd).toHaveLength(3);
    expect(datasets.past).toEqual([{ text: '3 past the search', dateMs: ruler.toMs }]);
  });

  it('say nothing of the search where all dots lie within it', () => {
    expect(draw(marks.plantOn).datasets.past).toEqual([]);
  });
});

describe('pileDots', () => {
  const overlap = (piled: readonly { x: number; y: number }[], diameter: number) =>
    piled.some((a, i) => piled.some((b, j) => j > i && Math.hypot(a.x - b.x, a.y - b.y) < diameter - 1e-6));

  it('keeps every place and lets no dot overlap another', () => {
    const places = [3, 1, 1, 1, 8, 40, 41, 47, 47, 12, 9, 9.5];
    const piled = pileDots(places, 10);
    expect(piled.map(({ x }) => x)).toEqual(places);
    expect(overlap(piled, 10)).toBe(false);
  });

  it('puts dots on the ground where there is room', () => {
    expect(pileDots([0, 10, 20], 10).map(({ y }) => y)).toEqual([5, 5, 5]);
  });

  it('stacks dots of one place straight up', () => {
    expect(pileDots([7, 7, 7], 10).map(({ y }) => y)).toEqual([5, 15, 25]);
  });

  it('takes no dots', () => {
    expect(pileDots([], 10)).toEqual([]);
  });
});
