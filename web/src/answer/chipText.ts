/** Odds in 20 on a chip; "<1" and ">19" at the ends, as "fewer than 1 in 20" and "more than 19 in 20". */
export const chipText = (odds: number): string =>
  odds < 0.025 ? '<1' : odds > 0.975 ? '>19' : `${Math.round(odds * 20)}`;
