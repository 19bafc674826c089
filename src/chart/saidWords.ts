/** Dates and odds as charts and pages say them: short, without a percentage. */
const written = (options: Intl.DateTimeFormatOptions) => {
  const format = new Intl.DateTimeFormat('en-US', { ...options, timeZone: 'UTC' });
  return (isoDate: string) => format.format(Date.parse(isoDate));
};

/** "May 10, 2027" */
export const sayDate = written({ year: 'numeric', month: 'long', day: 'numeric' });
/** "May 10" */
export const sayMonthDay = written({ month: 'long', day: 'numeric' });

/** "May 10", with the year only where it is not that of `near`. */
export const sayNear = (isoDate: string, near: string): string =>
  isoDate.slice(0, 4) === near.slice(0, 4) ? sayMonthDay(isoDate) : sayDate(isoDate);

/** Odds as the sentence says them, without the percentage: "about 7 in 20". */
export function sayOdds(odds: number): string {
  if (odds < 0.025) return 'fewer than 1 in 20';
  if (odds > 0.975) return 'more than 19 in 20';
  return `about ${Math.round(odds * 20)} in 20`;
}

/** Odds for a table: twentieths with one decimal, so that near values can be told apart. */
export const twentieths = (odds: number): string => (odds * 20).toFixed(1);
