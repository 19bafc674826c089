import { describe, expect, it } from 'vitest';
import {
  type ControlOptions,
  type ControlRow,
  controlAgainstOdds,
} from '../../src/chart/controlAgainstOdds.ts';
import { LIGHT_TOKENS } from '../../src/chart/theme.ts';
import { controlRows } from './compareFixture.ts';

const draw = (rows: readonly ControlRow[], options: Partial<ControlOptions> = {}) =>
  controlAgainstOdds(rows, {
    tokens: LIGHT_TOKENS,
    description: 'A finding.',
    widthPx: 700,
    oddsLimit: 0.1,
    ...options,
  });
const names = (rows: readonly object[]) => rows.map((row) => (row as { name: string }).name);

describe('controlAgainstOdds', () => {
  it('draws each residual once, by its kind, and leaves out what has no odds', () => {
    const { datasets } = draw(controlRows);
    expect(names(datasets.allowed)).toEqual(['seen', 'no half-life', 'same place']);
    expect(names(datasets.allowedMemory)).toEqual(['recalled']);
    expect(names(datasets.struck)).toEqual(['ruled out']);
    expect(names(datasets.struckMemory)).toEqual(['ruled out, recalled']);
    expect(JSON.stringify(datasets)).not.toContain('leaves nothing');
  });

  it('joins wet third, all years and dry third of each residual', () => {
    const { datasets } = draw(controlRows.slice(0, 1));
    expect(datasets.ranges).toEqual([
      { name: 'seen', step: 0, weeks: 7, in20: expect.closeTo(2.8, 12) },
      { name: 'seen', step: 1, weeks: 8, in20: 4 },
      { name: 'seen', step: 2, weeks: 9, in20: expect.closeTo(5.2, 12) },
    ]);
  });

  it('puts residuals without a half-life left of the axis, and has no such lane without them', () => {
    const { datasets, padding } = draw(controlRows);
    const [, lane] = datasets.allowed as { weeks: number }[];
    expect(lane.weeks).toBeLessThan(0);
    const without = draw(controlRows.filter(({ weeksOfControl }) => weeksOfControl !== null));
    expect(without.datasets.lane).toEqual([]);
    expect((without.padding as { left: number }).left).toBeLessThan((padding as { left: number }).left);
  });

  it('names marks that lie on each other together', () => {
    const { datasets } = draw(controlRows);
    const texts = [...datasets.leftLabels, ...datasets.centerLabels, ...datasets.rightLabels].map(
      (row) => (row as { text: string }).text,
    );
    expect(texts).toContain('no half-life +1');
    expect(texts).not.toContain('same place');
  });

  it('draws weeks past the search at its end, not at nothing', () => {
    const { datasets } = draw(controlRows);
    expect((datasets.struck[0] as { weeks: number }).weeks).toBe(150);
  });
});
