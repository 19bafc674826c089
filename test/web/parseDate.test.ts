import { describe, expect, it } from 'vitest';
import { daysBetween, isoOf } from '../../web/src/question/calendar.ts';
import { parseDate as parse } from '../../web/src/question/parseDate.ts';
import { shownDates, typedDates } from '../../web/src/units/dates.ts';

const parseDate = (text: string) => parse(text, 'us');

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
    shownDates('iso').full('2027-05-10'),
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

describe('parseDate where dates are ISO', () => {
  it.each(['2027-05-10', 'May 10 2027', '10 May 2027', ' 2027-5-10 '])('reads %s as in words', (text) => {
    expect(parse(text, 'iso')).toEqual({ value: '2027-05-10' });
  });

  it('reads a date with slashes only where it can be read in one way', () => {
    expect(parse('20/5/2027', 'iso')).toEqual({ value: '2027-05-20' });
    expect(parse('5/20/2027', 'iso')).toEqual({ value: '2027-05-20' });
    expect(parse('5.5.2027', 'iso')).toEqual({ value: '2027-05-05' });
    expect(parse('5/10/2027', 'iso')).toEqual({
      problem: '“5/10/2027” can be read in two ways. Write it like 2027-05-10 or May 10 2027.',
    });
  });
});

describe('dates of the page', () => {
  const [us, iso] = [typedDates('us'), typedDates('iso')];

  it('never slip a day, whatever the time zone', () => {
    expect(us.full('2027-05-10')).toBe('May 10, 2027');
    expect(us.withWeekday('2027-01-01')).toBe('Friday, January 1, 2027');
    expect(us.short('1969-12-31')).toBe('Dec 31, 1969');
    expect(us.weekday('1969-12-31')).toBe('Wednesday');
    expect(us.month('2026-09')).toBe('Sep 2026');
    expect(isoOf(0)).toBe('1970-01-01');
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
  });

  it('leave out a year that is known, in words only', () => {
    expect(us.near('2027-05-10', '2027-01-01')).toBe('May 10');
    expect(us.near('2028-05-10', '2027-01-01')).toBe('May 10, 2028');
    expect(iso.near('2027-05-10', '2027-01-01')).toBe('2027-05-10');
    expect(iso.monthDay('2027-05-10')).toBe('2027-05-10');
    expect(iso.withWeekday('2027-01-01')).toBe('Friday, 2027-01-01');
    expect(iso.month('2026-09')).toBe('2026-09');
  });

  it('keep month and day on one line where they are shown', () => {
    expect(shownDates('us').near('2027-05-10', '2027-01-01')).toBe('May\u00a010');
  });

  it('are given back as written where an address holds none', () => {
    for (const text of ['soon', '2027-02-30', '2027-5-1', '']) {
      expect(us.full(text)).toBe(text);
      expect(iso.near(text, text)).toBe(text);
      expect(us.weekday(text)).toBe('');
    }
  });
});
