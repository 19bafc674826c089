import { isRainMissing } from '../../schema/codes.ts';

/** Largest share of missing rain days in a usable window. [0-1] */
const MAX_MISSING_SHARE = 0.05;
/** Longest run of missing rain days in a usable window. [d] */
const MAX_MISSING_RUN_DAYS = 10;

/** Tells which windows of a record hold enough rain values to stand for a year. */
export interface WindowCheck {
  /** Whether the window of `length` days from index `start` lies in the record, misses at most 5 % of its rain days and no run over 10 days. */
  usable(start: number, length: number): boolean;
}

/**
 * Prepares the window check of a series; each question then costs a few array reads.
 * @param rainOrigin per day; filled days count as missing, from neighbours too; spread and own-gauge days do not
 */
export function windowCheckOf(rainOrigin: Uint8Array): WindowCheck {
  const days = rainOrigin.length;
  const missingBefore = new Int32Array(days + 1);
  /** For each day, the first index at or after it where a missing run longer than allowed is complete. */
  const nextLongRun = new Int32Array(days + 1).fill(days);
  const runLength = new Int32Array(days);
  for (let day = 0; day < days; day++) {
    const missing = isRainMissing(rainOrigin[day]);
    missingBefore[day + 1] = missingBefore[day] + (missing ? 1 : 0);
    runLength[day] = missing ? (day > 0 ? runLength[day - 1] : 0) + 1 : 0;
  }
  for (let day = days - 1; day >= 0; day--) {
    nextLongRun[day] = runLength[day] > MAX_MISSING_RUN_DAYS ? day : nextLongRun[day + 1];
  }
  return {
    usable(start, length) {
      const end = start + length;
      if (start < 0 || end > days) return false;
      if (missingBefore[end] - missingBefore[start] > MAX_MISSING_SHARE * length) return false;
      return !longRunInside(start, end);
    },
  };

  /** A run that began before the window counts only with its days inside it. */
  function longRunInside(start: number, end: number): boolean {
    let day = nextLongRun[start];
    while (day < end) {
      if (Math.min(runLength[day], day - start + 1) > MAX_MISSING_RUN_DAYS) return true;
      day = nextLongRun[day + 1];
    }
    return false;
  }
}
