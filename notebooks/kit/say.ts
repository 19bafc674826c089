/** Odds as the page says them, with blanks that hold a line together: "5 in 20 (24 %)". */
export const sayOdds = (odds: number): string =>
  odds < 0.025
    ? 'fewer than 1 in 20'
    : odds > 0.975
      ? 'more than 19 in 20'
      : `${Math.round(odds * 20)} in 20 (${Math.round(odds * 100)} %)`;

/** A number of so many significant figures, without an exponent where it is plain. */
export const sayNumber = (value: number): string => String(Number(value.toPrecision(6)));

/** A share in whole per cent. */
export const sayPercent = (share: number): string => `${Math.round(share * 100)} %`;
