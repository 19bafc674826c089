import { describe, expect, it } from 'vitest';
import { sayInterval } from '../../src/catalogue/intervalLength.ts';
import { parseInterval } from '../../src/catalogue/parseInterval.ts';
import fc from '../fastCheck.ts';

describe('parseInterval', () => {
  it.each([
    ['9 months', 9, 0],
    ['9months', 9, 0],
    ['9-month', 9, 0],
    ['9 MO', 9, 0],
    ['1 month', 1, 0],
    ['30 d', 0, 30],
    ['30d', 0, 30],
    ['1 day', 0, 1],
    ['1 month 15 days', 1, 15],
    ['1 month, 15 days', 1, 15],
    ['1 month and 15 days', 1, 15],
    ['15 days 1 month', 1, 15],
    ['2 years', 24, 0],
    ['1.5 years', 18, 0],
    ['1 yr 6 mo', 18, 0],
    ['10.5 months', 10, 15],
    ['0.5 months', 0, 15],
    ['6 weeks', 0, 42],
    ['0', 0, 0],
    ['0 days', 0, 0],
    ['  4 months ', 4, 0],
    ['120 months', 120, 0],
  ])('reads "%s"', (text, months, days) => {
    expect(parseInterval(text)).toEqual({ months, days });
  });

  it.each([
    '',
    ' ',
    '9',
    'months',
    'nine months',
    '-3 months',
    '9-12 months',
    '3 months 4 months',
    '9.25 months',
    '1.5 days',
    '4 fortnights',
    '9 m',
    '11 years',
    '99999 d',
    '9 months;',
    '9 months,',
  ])('refuses "%s"', (text) => {
    expect(() => parseInterval(text)).toThrow(
      expect.objectContaining({
        code: 'INTERVAL_UNREADABLE',
        kind: 'invalid-input',
        message: `"${text}" cannot be read as a rotation interval.`,
        hint: expect.stringContaining('9 months'),
      }),
    );
  });

  it('reads back what sayInterval says', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 400 }), (months, days) => {
        expect(parseInterval(sayInterval({ months, days }))).toEqual({ months, days });
      }),
    );
  });
});
