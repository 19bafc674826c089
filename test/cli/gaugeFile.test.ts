import { describe, expect, it } from 'vitest';
import { readGaugeFile } from '../../src/cli/gaugeFile.ts';
import { refusalOf } from '../refusal.ts';

const refused = (text: string) => refusalOf(Promise.resolve().then(() => readGaugeFile(text, 'gauge.csv')));

describe('readGaugeFile', () => {
  it('reads rain and irrigation in the units of their headers; an empty cell is no reading', () => {
    expect(
      readGaugeFile(
        'date,rain_mm,irrigation_in\n2026-07-01,0,\n2026-07-02,,1\n2026-07-03,12.5,0\n',
        'gauge.csv',
      ),
    ).toEqual({
      gauge: [
        { date: '2026-07-01', rainMm: 0 },
        { date: '2026-07-03', rainMm: 12.5 },
      ],
      irrigation: [{ date: '2026-07-02', mm: 25.4 }],
    });
  });

  it('knows other spellings of the headers, in any order', () => {
    const { gauge } = readGaugeFile('"Rainfall (inches)",Note,Day\n2,x,2026-07-01\n', 'gauge.csv');
    expect(gauge).toEqual([{ date: '2026-07-01', rainMm: 50.8 }]);
    expect(readGaugeFile('date,Rain [mm]\n2026-07-01,3\n', 'g').gauge).toEqual([
      { date: '2026-07-01', rainMm: 3 },
    ]);
  });

  it.each([
    ['a unit left out', 'date,rain\n2026-07-01,3\n', 'line 1', 'mm or inches'],
    ['a date that is none', 'date,rain_mm\n2026-07-01,3\n07/02/2026,3\n', 'line 3', '"07/02/2026"'],
    ['a day that stands twice', 'date,rain_mm\n2026-07-01,3\n2026-07-01,4\n', 'line 3', 'twice'],
    ['a word for an amount', 'date,rain_mm\n2026-07-01,trace\n', 'line 2', '"trace"'],
    ['less than nothing', 'date,rain_mm\n2026-07-01,-1\n', 'line 2', '"-1"'],
    ['no date column', 'when,rain_mm\n2026-07-01,1\n', 'line 1', '"date"'],
    ['no amounts', 'date,note\n2026-07-01,1\n', 'line 1', '"irrigation"'],
    ['a line with a cell too few', 'date,rain_mm\n2026-07-01\n', 'line 2', ''],
    ['an empty file', '', 'line 1', 'empty'],
  ])('refuses %s and says where', async (_, text, line, what) => {
    const refusal = await refused(text);
    expect(refusal.code).toBe('GAUGE_UNREADABLE');
    expect(refusal.message).toContain(`gauge.csv, ${line}: `);
    expect(refusal.message).toContain(what);
    expect(refusal.hint).toContain('rain_mm');
  });
});
