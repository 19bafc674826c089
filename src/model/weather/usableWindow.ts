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

/** A stretch of days without rain values: from `first` to before `end`, after `before` missing days of earlier ones. */
interface Gap {
  readonly first: number;
  readonly end: number;
  readonly before: number;
}

/**
 * Prepares the window check of a series; each question then looks at its gaps alone.
 * @param rainOrigin per day; filled days count as missing, from neighbours too; spread and own-gauge days do not
 */
export function windowCheckOf(rainOrigin: Uint8Array): WindowCheck {
  const days = rainOrigin.length;
  const gaps = gapsOf(rainOrigin);
  const long = gaps.filter(({ first, end }) => end - first > MAX_MISSING_RUN_DAYS);
  return {
    usable(start, length) {
      const end = start + length;
      if (start < 0 || end > days) return false;
      if (missingBefore(gaps, end) - missingBefore(gaps, start) > MAX_MISSING_SHARE * length) return false;
      // A run that began before the window counts only with its days inside it.
      return !long.some((gap) => Math.min(gap.end, end) - Math.max(gap.first, start) > MAX_MISSING_RUN_DAYS);
    },
  };
}

function gapsOf(rainOrigin: Uint8Array): Gap[] {
  const gaps: Gap[] = [];
  let before = 0;
  for (let first = 0; first < rainOrigin.length; first++) {
    if (!isRainMissing(rainOrigin[first])) continue;
    let end = first + 1;
    while (end < rainOrigin.length && isRainMissing(rainOrigin[end])) end++;
    gaps.push({ first, end, before });
    before += end - first;
    first = end;
  }
  return gaps;
}

/** Missing days before a day; the gaps that begin before it are found by halving. */
function missingBefore(gaps: readonly Gap[], day: number): number {
  let low = 0;
  let high = gaps.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (gaps[middle].first < day) low = middle + 1;
    else high = middle;
  }
  if (low === 0) return 0;
  const { first, end, before } = gaps[low - 1];
  return before + Math.min(day, end) - first;
}
