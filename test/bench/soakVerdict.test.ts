import { describe, expect, it } from 'vitest';
import { judgeSoak, type SoakLook } from './soakVerdict.ts';
import { trendOf } from './trend.ts';

/** Ten minutes of looks, restless by a saw of some MiB and ms, changed over time. */
const looks = (change: (minutes: number, saw: number) => Partial<SoakLook> = () => ({})): SoakLook[] =>
  Array.from({ length: 30 }, (_, n) => {
    const [minutes, saw] = [n / 3, (n * 7) % 5];
    const steady = { minutes, memoryMb: 200 + saw, p99Ms: 40 + saw, askerP99Ms: 2 + saw };
    return { ...steady, ...change(minutes, saw) };
  });
const QUIET = { failed: 0, handlesBefore: 23, handlesAfter: 23 };

describe('the verdict on a soak', () => {
  it('passes a restless server that stays where it is, and a machine that becomes slower with it', () => {
    expect(judgeSoak(looks(), QUIET).faults).toEqual([]);
    const busier = looks((minutes, saw) => ({
      p99Ms: 40 + saw + 2 * minutes,
      askerP99Ms: 2 + saw + 2 * minutes,
    }));
    expect(judgeSoak(busier, QUIET).faults).toEqual([]);
  });

  it.each<[string, (minutes: number, saw: number) => Partial<SoakLook>]>([
    ['memory grows', (minutes, saw) => ({ memoryMb: 200 + saw + minutes / 2 })],
    ['growth of 2 MiB/min would not have shown', (_, saw) => ({ memoryMb: 200 + 40 * saw })],
    ['growth of 2 MiB/min would not have shown', () => ({ memoryMb: Number.NaN })],
    ['answers become slower', (minutes, saw) => ({ p99Ms: 40 + saw + 2 * minutes })],
  ])('says: %s', (fault, change) => {
    expect(judgeSoak(looks(change), QUIET).faults).toEqual([fault]);
  });

  it.each([
    ['handles grow', { handlesAfter: 24 }],
    ['handles grow', { handlesAfter: Number.NaN }],
    ['requests failed', { failed: 1 }],
  ])('says: %s, where %o', (fault, change) => {
    expect(judgeSoak(looks(), { ...QUIET, ...change }).faults).toEqual([fault]);
  });
});

it('a slope and its error are those of least squares', () => {
  const values = [1, 3, 2, 5];
  const { slope, error } = trendOf(values.map((value, at) => ({ at, value })));
  expect(slope).toBeCloseTo(1.1, 12);
  expect(error).toBeCloseTo(Math.sqrt(2.7 / 2 / 5), 12);
});
