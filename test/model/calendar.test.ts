import { describe, expect, it } from 'vitest';
import { civilDateOf, dayNumberOf, isoDateOf, parseIsoDate } from '../../src/calendar.ts';
import { labelDateOf, sameDateInYear } from '../../src/model/calendar/interval.ts';
import { calendarSlotOf, calendarSlots } from '../../src/model/weather/calendarSlot.ts';
import fc from '../fastCheck.ts';

const label = (date: string, months: number, days: number) =>
  isoDateOf(labelDateOf(parseIsoDate(date), { months, days }));

describe('day numbers', () => {
  it('agree with the platform calendar on every day of 1700-2200', () => {
    for (let day = dayNumberOf(1700, 1, 1); day <= dayNumberOf(2200, 12, 31); day++) {
      const date = new Date(day * 86_400_000);
      const expected = { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
      if (JSON.stringify(civilDateOf(day)) !== JSON.stringify(expected))
        expect(civilDateOf(day)).toEqual(expected);
      if (dayNumberOf(expected.year, expected.month, expected.day) !== day) expect.fail(isoDateOf(day));
    }
    expect(dayNumberOf(1970, 1, 1)).toBe(0);
  });

  it.each(['2021-02-29', '2021-13-01', '2021-00-10', '2021-1-1', 'tomorrow', '2021-04-31', ''])(
    'refuses %j',
    (text) => {
      expect(() => parseIsoDate(text)).toThrow(/not a calendar date/);
    },
  );

  it('gives every date the same slot in each year', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -80_000, max: 40_000 }),
        fc.integer({ min: 1, max: 1500 }),
        (first, days) => {
          const slots = calendarSlots(first, days);
          expect(slots[days - 1]).toBe(calendarSlotOf(first + days - 1));
          expect(slots[0]).toBe(calendarSlotOf(first));
        },
      ),
    );
    expect(calendarSlotOf(parseIsoDate('2021-12-31'))).toBe(365);
    expect(calendarSlotOf(parseIsoDate('2021-03-01'))).toBe(60);
  });
});

describe('label date', () => {
  it('adds calendar months, then days', () => {
    expect(label('2020-08-10', 9, 0)).toBe('2021-05-10');
    expect(label('2020-08-10', 0, 30)).toBe('2020-09-09');
    expect(label('2020-08-10', 1, 15)).toBe('2020-09-25');
  });

  it('falls back to the last day of a shorter month', () => {
    expect(label('2020-08-31', 6, 0)).toBe('2021-02-28');
    expect(label('2023-08-31', 6, 0)).toBe('2024-02-29');
    expect(label('2020-10-31', 1, 1)).toBe('2020-12-01');
  });

  it('moves 29 February to 28 February in other years', () => {
    expect(isoDateOf(sameDateInYear(parseIsoDate('2020-02-29'), 2021))).toBe('2021-02-28');
    expect(isoDateOf(sameDateInYear(parseIsoDate('2020-02-29'), 1996))).toBe('1996-02-29');
  });
});
