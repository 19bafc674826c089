/** Odds as the sentence says them, without the percentage: "about 7 in 20". */
export function sayOdds(odds: number): string {
  if (odds < 0.025) return 'fewer than 1 in 20';
  if (odds > 0.975) return 'more than 19 in 20';
  return `about ${Math.round(odds * 20)} in 20`;
}

/** Odds for a table: twentieths with one decimal, so that near values can be told apart. */
export const twentieths = (odds: number): string => (odds * 20).toFixed(1);
