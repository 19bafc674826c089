import { describe, expect, it } from 'vitest';
import { MS_PER_DAY, monthStartMs, msOf } from '../../src/chart/dateMs.ts';
import { curveAt } from '../../src/chart/oddsSeason.ts';
import { markRows, type Ruler, rulerEnds, rulerPx, rulerTicks } from '../../src/chart/ruler.ts';
import { answer } from './fixture.ts';

const wide = (from: string, to: string, widthPx: number): Ruler => ({
  fromMs: msOf(from),
  toMs: msOf(to),
  widthPx,
  leftPx: 0,
  rightPx: 0,
});

describe('rulerEnds', () => {
  const season = { ...answer.season, quantileDates: new Array<string | null>(20).fill('2027-06-01') };
  const dates = { labelDate: '2026-12-14', clearDate: '2027-06-07', season };

  it('runs from the month of spraying past the last date to be seen', () => {
    const { fromMs, toMs } = rulerEnds(dates, '2026-08-14', '2027-05-10');
    expect([fromMs, toMs]).toEqual([msOf('2026-08-01'), msOf('2027-07-01')]);
  });

  it('makes room for a planting date after all others', () => {
    expect(rulerEnds(dates, '2026-08-14', '2028-02-28').toMs).toBe(msOf('2028-04-01'));
  });

  it('reaches the end of the search where a dot lies past it', () => {
    const late = { ...season, quantileDates: [...season.quantileDates.slice(1), null] };
    const { toMs } = rulerEnds({ ...dates, season: late }, season.startDate, '2027-05-10');
    expect(toMs).toBeGreaterThan(msOf(season.startDate) + season.odds.length * MS_PER_DAY);
  });

  it('does without a clear date and without a season', () => {
    expect(rulerEnds({ labelDate: '2027-01-01', clearDate: null }, '2026-08-14', '2026-09-01').toMs).toBe(
      msOf('2027-02-01'),
    );
  });
});

describe('rulerTicks', () => {
  it('names every month where there is room, the year once', () => {
    const ticks = rulerTicks(wide('2026-11-01', '2027-03-01', 400));
    expect(ticks.map(({ name, year }) => [name, year])).toEqual([
      ['Nov', 2026],
      ['Dec', null],
      ['Jan', 2027],
      ['Feb', null],
    ]);
  });

  it('names fewer months on a narrow ruler', () => {
    const ticks = rulerTicks(wide('2026-08-01', '2027-08-01', 290));
    expect(ticks.map(({ name }) => name)).toEqual(['Aug', 'Oct', 'Dec', 'Feb', 'Apr', 'Jun']);
  });

  it('names the middle of months on a short one', () => {
    const ticks = rulerTicks(wide('2026-06-01', '2026-08-01', 600));
    expect(ticks.map(({ name }) => name)).toEqual(['Jun', 'Jun 15', 'Jul', 'Jul 15']);
    expect(ticks[3].ms).toBe(msOf('2026-07-15'));
  });
});

describe('marks', () => {
  const ruler = wide('2027-01-01', '2028-01-01', 365);

  it('stand where their dates are', () => {
    const { labelMark, clearMark, planting } = markRows(ruler, {
      plantOn: '2027-05-10',
      labelDate: '2027-03-01',
      clearDate: '2027-06-07',
    });
    expect(rulerPx(ruler, labelMark[0].dateMs)).toBe(59);
    expect(clearMark[0].dateMs).toBe(msOf('2027-06-07'));
    expect(planting[0].dateMs).toBe(msOf('2027-05-10'));
    expect(labelMark[0].letterMs).toBe(labelMark[0].dateMs);
  });

  it('move their letters apart, not their lines, where they are close', () => {
    const { labelMark, clearMark } = markRows(ruler, {
      plantOn: '2027-05-10',
      labelDate: '2027-03-01',
      clearDate: '2027-03-05',
    });
    expect(rulerPx(ruler, clearMark[0].letterMs) - rulerPx(ruler, labelMark[0].letterMs)).toBeCloseTo(14, 6);
    expect(clearMark[0].dateMs).toBe(msOf('2027-03-05'));
  });

  it('share one letter where label date and clear date fall on one day', () => {
    const same = { plantOn: '2027-05-10', labelDate: '2027-03-01', clearDate: '2027-03-01' };
    expect(markRows(ruler, same)).toMatchObject({ labelMark: [{ letter: 'L C' }], clearMark: [] });
  });

  it('leave out a clear date that is not there', () => {
    const none = { plantOn: '2027-05-10', labelDate: '2027-03-01', clearDate: null };
    expect(markRows(ruler, none).clearMark).toEqual([]);
  });
});

describe('dates', () => {
  it('find month starts over the turn of a year', () => {
    expect(monthStartMs(msOf('2026-11-30'), 3)).toBe(msOf('2027-02-01'));
    expect(monthStartMs(msOf('2027-01-31'), -1)).toBe(msOf('2026-12-01'));
  });

  it('read a daily curve on a date and null outside it', () => {
    expect(curveAt([0.9, 0.8, 0.7], '2027-02-28', '2027-03-01')).toBe(0.8);
    expect(curveAt([0.9], '2027-02-28', '2027-03-01')).toBeNull();
    expect(curveAt([0.9], '2027-02-28', '2027-02-27')).toBeNull();
  });
});
