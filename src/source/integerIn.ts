const BLANK = 32;
const MINUS = 45;
const ZERO = 48;
const MOST_DIGITS = 9;

/**
 * Integer written in bytes from `from` up to `to`: blanks in front and one minus allowed, nothing else.
 * NaN where there is no such integer. Allocates nothing.
 */
export function integerIn(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  while (at < to && bytes[at] === BLANK) at++;
  const negative = bytes[at] === MINUS;
  if (negative) at++;
  if (at >= to || to - at > MOST_DIGITS) return Number.NaN;
  let value = 0;
  for (; at < to; at++) {
    const digit = bytes[at] - ZERO;
    if (digit < 0 || digit > 9) return Number.NaN;
    value = value * 10 + digit;
  }
  return negative ? -value : value;
}
