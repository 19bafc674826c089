/** A name as it is compared: lower case, one kind of blank, no hyphens. */
export const spellingOf = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');

/**
 * Fewest single-letter insertions, deletions, replacements and swaps of neighbours from one word to another.
 * [letters]
 *
 * Equation   optimal string alignment distance, by dynamic programming over the two words
 * Symbols    from, to = any two texts
 * Valid      short words: time and memory grow with the product of their lengths
 * Source     textbook method (edit distance with transpositions)
 * Checked    test/catalogue/spelling.test.ts
 * @example   editDistance('lentle', 'lentil') // 2
 */
export function editDistance(from: string, to: string): number {
  const rows: number[][] = [Array.from({ length: to.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = rows[i - 1][j - 1] + (from[i - 1] === to[j - 1] ? 0 : 1);
      row[j] = Math.min(replaced, rows[i - 1][j] + 1, row[j - 1] + 1);
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      if (swapped) row[j] = Math.min(row[j], rows[i - 2][j - 2] + 1);
    }
    rows.push(row);
  }
  return rows[from.length][to.length];
}
