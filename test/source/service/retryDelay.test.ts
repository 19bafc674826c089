import { describe, expect, it } from 'vitest';
import { backOffMs, retryAfterMs } from '../../../src/source/service/retryDelay.ts';

const SHAPE = { firstWaitMs: 1000, mostWaitMs: 30_000 };

describe('back-off', () => {
  it('doubles up to the longest wait; jitter takes off up to half', () => {
    const waits = (random: number) =>
      [1, 2, 3, 4, 5, 6, 7].map((attempt) => backOffMs(attempt, random, SHAPE));
    expect(waits(1)).toEqual([1000, 2000, 4000, 8000, 16_000, 30_000, 30_000]);
    expect(waits(0)).toEqual([500, 1000, 2000, 4000, 8000, 15_000, 15_000]);
    expect(backOffMs(1, 0.5, SHAPE)).toBe(750);
  });
});

describe('Retry-After', () => {
  const now = Date.parse('2026-01-01T00:00:00Z');
  const asked = (headers: Record<string, string>) => retryAfterMs(new Headers(headers), now);

  it('reads seconds', () => {
    expect(asked({ 'retry-after': '17' })).toBe(17_000);
    expect(asked({ 'retry-after': '0' })).toBe(0);
  });

  it('reads a date, against the answer’s own date where it has one', () => {
    expect(asked({ 'retry-after': 'Thu, 01 Jan 2026 00:00:40 GMT' })).toBe(40_000);
    const date = 'Thu, 01 Jan 2026 00:00:30 GMT';
    expect(asked({ 'retry-after': 'Thu, 01 Jan 2026 00:00:40 GMT', date })).toBe(10_000);
    expect(asked({ 'retry-after': 'Wed, 31 Dec 2025 00:00:00 GMT' })).toBe(0);
  });

  it('takes what it cannot read as no wish', () => {
    expect(asked({})).toBeNull();
    expect(asked({ 'retry-after': '' })).toBeNull();
    expect(asked({ 'retry-after': 'soon' })).toBeNull();
    expect(asked({ 'retry-after': '-5' })).toBeNull();
  });
});
