import { describe, expect, it } from 'vitest';
import { dotsFinding, rainFinding, seasonFinding, yearsFinding } from '../../src/chart/findings.ts';
import { keepTogether, oddsWord, sayOdds, splitSentence } from '../../web/src/answer/oddsInWords.ts';
import { csvOf } from '../../web/src/charts/csv.ts';
import { seasonRows } from '../../web/src/charts/seasonRows.ts';
import { refusalOf, refusedField } from '../../web/src/question/FormContext.ts';
import { questionInWords } from '../../web/src/question/questionInWords.ts';
import { typedDates } from '../../web/src/units/dates.ts';
import { rainText } from '../../web/src/units/units.ts';
import { answer } from '../chart/fixture.ts';

const inches = (mm: number) => rainText(mm, 'us');
const us = typedDates('us');

describe('odds in words', () => {
  it('are twentieths, with the ends held open', () => {
    expect([0.0249, 0.025, 0.29, 0.975, 0.9751].map(sayOdds)).toEqual([
      'fewer than 1 in 20',
      'about 1 in 20',
      'about 6 in 20',
      'about 20 in 20',
      'more than 19 in 20',
    ]);
    expect(oddsWord(0.29)).toBe('fairly often');
  });

  it('are found in a sentence, and the parts make the sentence again', () => {
    const sentence = keepTogether(
      'In about 6 in 20 seasons and soils like this (29 %), it would hurt lentil, if your label’s interval is 4 months.',
    );
    const parts = splitSentence(sentence);
    expect(parts.odds).toBe('about 6\u00a0in\u00a020');
    expect(parts.condition).toMatch(/^, if your label/);
    expect(Object.values(parts).join('')).toBe(sentence);
  });

  it('leave a sentence without odds whole', () => {
    const sentence = 'No carryover is reckoned for lentil.';
    expect(splitSentence(sentence)).toEqual({ before: sentence, odds: '', after: '', condition: '' });
  });
});

describe('findings', () => {
  const { season } = answer;

  it('count the dots after the planting date', () => {
    const dates = { ...season, quantileDates: [...new Array(19).fill('2027-01-01'), null] };
    expect(dotsFinding(dates, '2027-05-10', 'lentil', us)).toBe(
      '1 of 20 dots lies after May 10: that often the field is not yet clear for lentil.',
    );
    expect(dotsFinding(dates, '2026-05-10', 'lentil', us)).toContain('All 20 dots lie after May 10');
    const early = { ...season, quantileDates: new Array(20).fill('2027-01-01') };
    expect(dotsFinding(early, '2027-05-10', 'lentil', us)).toContain('All 20 dots lie before May 10');
  });

  it('say when the odds come down to the limit', () => {
    const say = (part: object) => seasonFinding(season, { ...answer, ...part } as never, us);
    const dates = { labelDate: '2026-12-14', oddsAtLabelDate: 0.5 };
    expect(say({ ...dates, clearDate: '2027-06-07' })).toBe(
      'From about 10 in 20 on the label date, December 14, the odds come down to your limit on June 7, 2027.',
    );
    expect(say({ ...dates, clearDate: null })).toContain('do not come down to your limit');
    expect(say({ ...dates, clearDate: '2026-12-14' })).toContain('already within your limit');
  });

  it('give rain so far in the units asked for, with one percentage', () => {
    const rain = { observedMm: 25.4, normalMm: 50.8, percentOfNormal: 50, months: [] };
    const wet = { ...season, startDate: '2026-08-14', rain };
    expect(rainFinding(wet, '2026-09-30', inches, us)).toBe(
      '1.00 in of rain from spraying to September 30, 50 % of normal (2.00 in).',
    );
    expect(rainFinding(wet, '2026-09-30', (mm) => rainText(mm, 'metric'), us)).toContain('25 mm of rain');
    expect(rainFinding(wet, null, inches, us)).toContain('No rain of this season is known yet');
    expect(rainFinding(wet, '2026-08-13', inches, us)).toContain('No rain of this season is known yet');
  });

  it('never call dry years worse where they are not', () => {
    const thirds = (dry: number, wet: number) =>
      yearsFinding({
        ...answer,
        thirds: [
          { ...answer.thirds[0], name: 'dry', odds: dry },
          { ...answer.thirds[0], name: 'wet', odds: wet },
        ],
      } as never);
    expect(thirds(0.4, 0.2)).toContain('Dry years are worse: 8 in 20, against 4 in 20');
    expect(thirds(0.2, 0.4)).toContain('no worse');
    expect(thirds(0.2, 0.21)).toContain('alike');
  });

  it('stand on rows that average each third on its own', () => {
    const rows = seasonRows(
      {
        ...season,
        startDate: '2027-01-01',
        odds: [0.6, 0.5, 0.4],
        yearStepDays: 2,
        years: [
          { year: 1990, third: 'dry', probability: [0.8, 0.6] },
          { year: 1991, third: 'dry', probability: [0.6] },
          { year: 1992, third: 'wet', probability: [0.2, 0.1] },
        ],
      },
      10,
    );
    expect(rows).toEqual([
      { date: '2027-01-01', odds: 0.6, dry: 0.7, middle: null, wet: 0.2 },
      { date: '2027-01-03', odds: 0.4, dry: 0.6, middle: null, wet: 0.1 },
    ]);
  });
});

describe('CSV', () => {
  it('has heads with units, quotes what must be quoted, and lets no text pass for a formula', () => {
    const columns = [
      { head: 'Rain, in', cell: ({ rain }: { rain: number | null; note: string }) => rain },
      { head: 'Note', cell: ({ note }: { rain: number | null; note: string }) => note },
    ];
    const rows = [
      { rain: -1.5, note: 'a "b", c' },
      { rain: null, note: '=SUM(A1)' },
    ];
    expect(csvOf(columns, rows)).toBe('"Rain, in",Note\r\n-1.5,"a ""b"", c"\r\n,\'=SUM(A1)\r\n');
  });
});

describe('the question in words', () => {
  it('leaves out what is not given', () => {
    const question = {
      station: 'demo-invented',
      residual: 'flumioxazin',
      crop: 'lentil',
      appliedOn: '2026-08-14',
      plantOn: '2027-05-10',
    };
    expect(questionInWords(question, [], us)).toBe(
      'I sprayed flumioxazin on August 14, 2026 at 100 % of the top label rate, before lentil, planting May 10, 2027 near demo-invented. I accept 2 in 20.',
    );
    expect(questionInWords({ ...question, interval: '9 months', soilClass: 'loam' }, [], us)).toContain(
      'on loam near demo-invented. My label says 9 months.',
    );
  });
});

describe('a refusal', () => {
  const refusal = { code: 'INTERVAL_UNREADABLE', message: 'Not read.', details: {}, hint: 'Write it so.' };

  it('goes to the field it is about', () => {
    expect(refusedField(refusal)).toBe('interval');
    expect(refusalOf(refusal, 'interval')).toBe('Not read. Write it so.');
    expect(refusalOf(refusal, 'crop')).toBeNull();
    expect(refusedField({ ...refusal, code: 'OTHER', details: { field: 'plantOn' } })).toBe('plantOn');
  });

  it('about nothing in particular goes to no field', () => {
    expect(refusedField({ ...refusal, code: 'OTHER' })).toBeNull();
    expect(refusedField(null)).toBeNull();
    expect(refusalOf(null, 'crop')).toBeNull();
  });
});
