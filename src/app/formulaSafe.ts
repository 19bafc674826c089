/**
 * A text that a spreadsheet will not take for a formula: what begins like one gets an apostrophe in front, which
 * spreadsheets hide. Plain numbers stay as they are.
 */
export const formulaSafe = (text: string): string =>
  /^[=+\-@\t\r\n]/.test(text) && !/^[+-]?\d+(\.\d+)?$/.test(text) ? `'${text}` : text;
