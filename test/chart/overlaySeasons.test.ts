import { describe, expect, it } from 'vitest';
import { msOf } from '../../src/chart/dateMs.ts';
import { overlayEnds, overlaySeasons } from '../../src/chart/overlaySeasons.ts';
import { LIGHT_TOKENS } from '../../src/chart/theme.ts';
import { overlaid } from './compareFixture.ts';
import { answer, ruler } from './fixture.ts';

const { season, labelDate, clearDate, plantOn } = answer;
const seasons = overlaid(season, labelDate, clearDate);
const draw = () =>
  overlaySeasons(seasons, {
    tokens: LIGHT_TOKENS,
    description: 'A finding.',
    ruler,
    plantOn,
    oddsLimit: 0.1,
  });

describe('overlaySeasons', () => {
  it('parts every line at its own label date', () => {
    const { datasets } = draw();
    for (const { letter, labelDate: date } of seasons) {
      const of = (name: string) =>
        (datasets[name] as { letter: string; dateMs: number }[])
          .filter((row) => row.letter === letter)
          .map(({ dateMs }) => dateMs);
      expect(Math.max(...of('before'))).toBe(msOf(date));
      expect(Math.min(...of('after'))).toBe(msOf(date));
    }
  });

  it('rings clear dates that there are, and writes letters of one label date together', () => {
    const { datasets } = draw();
    expect(datasets.clear.length).toBe(2);
    expect(datasets.labelMark).toEqual([
      { dateMs: msOf(labelDate), letter: 'A B' },
      { dateMs: msOf(season.startDate), letter: 'C' },
    ]);
  });

  it('gives every line its letter', () => {
    expect((draw().datasets.letters as { letter: string }[]).map(({ letter }) => letter)).toEqual([
      'A',
      'B',
      'C',
    ]);
  });

  it('reaches from the month of spraying past the last date that must be seen', () => {
    const { fromMs, toMs } = overlayEnds(seasons, plantOn);
    expect(new Date(fromMs).toISOString().slice(0, 10)).toBe(`${season.startDate.slice(0, 7)}-01`);
    expect(toMs).toBeGreaterThan(msOf(clearDate ?? labelDate));
    expect(toMs).toBeGreaterThan(msOf(plantOn));
  });
});
