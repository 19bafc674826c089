import { describe, expect, it } from 'vitest';
import {
  amountsText,
  decodeAmounts,
  encodeAmounts,
  example,
  readAmounts,
} from '../../web/src/question/dayAmounts.ts';

const days = [
  { date: '2026-09-03', mm: 12.7 },
  { date: '2026-09-05', mm: 2.54 },
];

describe('water on days of its own', () => {
  it('is written and read one day a line, in the units shown', () => {
    expect(amountsText(days, 'us', 'us')).toBe('September 3, 2026: 0.5\nSeptember 5, 2026: 0.1');
    expect(amountsText(days, 'us', 'iso')).toBe('2026-09-03: 0.5\n2026-09-05: 0.1');
    for (const [units, style] of [
      ['us', 'us'],
      ['us', 'iso'],
      ['metric', 'us'],
      ['metric', 'iso'],
    ] as const) {
      expect(readAmounts(amountsText(days, units, style), units, style, 500)).toEqual({ value: days });
      expect(readAmounts(example(units, style), units, style, 500)).toHaveProperty('value');
    }
  });

  it('is read from what people paste', () => {
    expect(readAmounts('9/3/2026 0.5\n\n 2026-09-05 : .1 \n', 'us', 'us', 500)).toEqual({ value: days });
    expect(readAmounts(' ', 'us', 'us', 500)).toEqual({ value: [] });
  });

  it.each([
    ['September 3, 2026', 'not a date'],
    ['0.5', 'lacks a date or an amount'],
    ['soon 0.5', 'not a date'],
    ['9/3/2026 21', 'more than 19.69 in a day'],
    ['9/3/2026 1\n2026-09-03 1', 'stands there twice'],
  ])('is refused as "%s", with the reason', (text, reason) => {
    const result = readAmounts(text, 'us', 'us', 500) as { problem: string };
    expect(result.problem).toContain(reason);
  });

  it('fits into an address', () => {
    expect(encodeAmounts(days)).toBe('2026-09-03:12.7,2026-09-05:2.54');
    expect(decodeAmounts(encodeAmounts(days))).toEqual(days);
    expect(decodeAmounts('')).toEqual([]);
  });
});
