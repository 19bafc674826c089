/** Odds as the sentence says them, without the percentage: "about 7 in 20". */
export function sayOdds(odds: number): string {
  if (odds < 0.025) return 'fewer than 1 in 20';
  if (odds > 0.975) return 'more than 19 in 20';
  return `about ${Math.round(odds * 20)} in 20`;
}

/** Odds for a table: twentieths with one decimal, so that near values can be told apart. */
export const twentieths = (odds: number): string => (odds * 20).toFixed(1);

/** The range of odds in words, as a sentence goes on: "between 5 and 7 in 20". */
export function rangeWords({ low, high }: { readonly low: number; readonly high: number }): string {
  const [from, to] = [Math.round(low * 20), Math.round(high * 20)];
  return from === to ? `close to ${from} in 20` : `between ${from} and ${to} in 20`;
}
