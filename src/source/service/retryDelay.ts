/** Shape of the waits between attempts. */
export interface BackOff {
  /** Wait before the second attempt, jitter apart. [ms] */
  readonly firstWaitMs: number;
  /** Longest wait. [ms] */
  readonly mostWaitMs: number;
}

/**
 * Wait after the given attempt: doubled each time up to the longest, of which the random half is taken off in part, so
 * that clients that failed together do not come back together. [ms]
 * @param attempt the attempt that failed, from 1
 * @param random uniform on 0 to 1
 * @example backOffMs(3, 1, { firstWaitMs: 1000, mostWaitMs: 30_000 }) // 4000
 */
export function backOffMs(attempt: number, random: number, { firstWaitMs, mostWaitMs }: BackOff): number {
  const longest = Math.min(firstWaitMs * 2 ** (attempt - 1), mostWaitMs);
  return Math.round(longest * (0.5 + 0.5 * random));
}

/**
 * Wait that a `Retry-After` header asks for, in seconds or as a date; null where there is none that can be read. A date
 * is set against the answer's own `Date` where it has one, as the computer's clock may be wrong. [ms]
 */
export function retryAfterMs(headers: Headers, nowMs: number): number | null {
  const text = headers.get('retry-after')?.trim() ?? '';
  if (/^\d{1,9}$/.test(text)) return Number(text) * 1000;
  const until = /[A-Za-z]/.test(text) ? Date.parse(text) : Number.NaN;
  if (Number.isNaN(until)) return null;
  const answeredAt = Date.parse(headers.get('date') ?? '');
  return Math.max(0, until - (Number.isNaN(answeredAt) ? nowMs : answeredAt));
}
