import { describe, expect, it } from 'vitest';
import { daysBetween, isoOf, sayDate, sayFullDate, sayNear } from '../../web/src/question/calendar.ts';
import { parseDate } from '../../web/src/question/parseDate.ts';

describe('parseDate', () => {
  it.each([
    'May 10 2027',
    'May 10, 2027',
    'may 10th 2027',
    '10 May 2027',
    '10th may 2027',
    'Mon, May 10, 2027',
    'Monday May 10 2027',
    '5/10/2027',
    '05/10/2027',
    '5-10-2027',
    '5.10.2027',
    '2027-05-10',
    ' 2027-5-10 ',
  ])('reads %s as May 10', (text) => {
    expect(parseDate(text)).toEqual({ value: '2027-05-10' });
  });

  it('takes the month first, as is written in the United States', () => {
    expect(parseDate('3/4/2027')).toEqual({ value: '2027-03-04' });
  });

  it('knows leap days', () => {
    expect(parseDate('Feb 29 2028')).toEqual({ value: '2028-02-29' });
    expect(parseDate('Feb 29 2027')).toEqual({
      problem: '“Feb 29 2027” has no such day; that month has 28.',
    });
  });

  it.each([
    ['', 'A date is needed here.'],
    ['soon', 'not a date that can be read'],
    ['May 2027', 'not a date that can be read'],
    ['May 10', 'not a date that can be read'],
    ['Ma 10 2027', 'no such month'],
    ['20/5/2027', 'the month comes first'],
    ['5/10/27', 'four digits'],
    ['May 0 2027', 'no such day'],
  ])('refuses "%s" and says how to mend it', (text, reason) => {
    const result = parseDate(text);
    expect(result).toHaveProperty('problem');
    expect((result as { problem: string }).problem).toContain(reason);
  });
});

describe('dates in words', () => {
  it('never slip a day, whatever the time zone', () => {
    expect(sayDate('2027-05-10')).toBe('May 10, 2027');
    expect(sayFullDate('2027-01-01')).toBe('Friday, January 1, 2027');
    expect(isoOf(0)).toBe('1970-01-01');
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
  });

  it('leave out a year that is known', () => {
    expect(sayNear('2027-05-10', '2027-01-01')).toBe('May 10');
    expect(sayNear('2028-05-10', '2027-01-01')).toBe('May 10, 2028');
  });
});
