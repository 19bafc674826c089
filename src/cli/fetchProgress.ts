/** How far a fetch has come. */
export interface FetchState {
  /** Files dealt with, and files in all; 0 in all while the lists are being fetched. */
  readonly done: number;
  readonly total: number;
  /** Arrived so far. [B] */
  readonly bytes: number;
  /** Time since the start. [ms] */
  readonly elapsedMs: number;
}

/** One line: files, bytes, rate and, from the second file on, the time that the rest may take. */
export function fetchProgressText({ done, total, bytes, elapsedMs }: FetchState): string {
  const megabytes = bytes / 1e6;
  const rate = elapsedMs > 0 ? megabytes / (elapsedMs / 1000) : 0;
  const parts = [
    total === 0 ? 'lists' : `${done} of ${total} files`,
    `${megabytes.toFixed(1)} MB`,
    `${rate.toFixed(1)} MB/s`,
  ];
  if (done >= 2 && done < total) parts.push(`${sayTime((elapsedMs / done) * (total - done))} left`);
  return parts.join(', ');
}

/** "40 s", "3 min", "2.5 h". */
export function sayTime(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  if (seconds < 100) return `${seconds} s`;
  if (seconds < 90 * 60) return `${Math.round(seconds / 60)} min`;
  return `${(seconds / 3600).toFixed(1)} h`;
}
