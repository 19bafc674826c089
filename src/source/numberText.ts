const NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)$/;

/** Value of a plain decimal number; NaN where the text is no such number. */
export const numberOf = (text: string): number => (NUMBER.test(text) ? Number(text) : Number.NaN);

/** Digits after the decimal point, trailing zeros included. */
export function decimalsIn(text: string): number {
  const point = text.indexOf('.');
  return point < 0 ? 0 : text.length - point - 1;
}
