/** Milliseconds in a day. */
export const MS_PER_DAY = 86_400_000;

/** Start of a calendar date in UTC, as time scales take it. [ms since 1970-01-01] */
export const msOf = (isoDate: string): number => Date.parse(isoDate);

/** First day of the month `count` months after the month of a date. [ms since 1970-01-01] */
export function monthStartMs(ms: number, count = 0): number {
  const [year, month] = new Date(ms).toISOString().split('-').map(Number);
  const index = year * 12 + month - 1 + count;
  return Date.UTC(Math.floor(index / 12), index % 12, 1);
}
