/** Calendar dates of the page: `YYYY-MM-DD` texts and day numbers since 1970-01-01, always in UTC. */
const MS_PER_DAY = 86_400_000;

/** Day number of a date. */
export const dayOf = (isoDate: string): number => Date.parse(isoDate) / MS_PER_DAY;

/** Date of a day number. */
export const isoOf = (day: number): string => new Date(day * MS_PER_DAY).toISOString().slice(0, 10);

/** Whole days from one date to another. */
export const daysBetween = (from: string, to: string): number => dayOf(to) - dayOf(from);
