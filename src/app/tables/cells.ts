/** Cells that a spreadsheet would take for a formula, whatever apostrophes stand before. */
const FORMULA = /^'*[=+\-@\t\r＝＋－＠]/;
const ESCAPED = /^'+[=+\-@\t\r＝＋－＠]/;
const PLAIN_NUMBER = /^[+-]?\d+(\.\d+)?(e[+-]?\d+)?$/i;

/**
 * A text as a cell that no spreadsheet runs: one apostrophe goes before what would be taken for a formula. Plain numbers
 * stay as they are.
 */
export const guardCell = (text: string): string =>
  FORMULA.test(text) && !PLAIN_NUMBER.test(text) ? `'${text}` : text;

/** The text behind a guarded cell. */
export const unguardCell = (cell: string): string => (ESCAPED.test(cell) ? cell.slice(1) : cell);

/** Rows as CSV text, the first being the head; lines end as RFC 4180 has it. */
export const csvOf = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map((cell) => quote(guardCell(cell))).join(',')}\r\n`).join('');

const quote = (cell: string): string =>
  /[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
