const MOST = 5;
/** Letters that are compared; ids have eleven. */
const LETTERS = 40;

/** Number of letters to change, add or drop to make one text of the other; letter case counts half. */
function distance(a: string, b: string): number {
  let before = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      const sameLetter = same || a[i - 1].toLowerCase() === b[j - 1].toLowerCase();
      const change = same ? 0 : sameLetter ? 0.5 : 1;
      row.push(Math.min(before[j] + 1, row[j - 1] + 1, before[j - 1] + change));
    }
    before = row;
  }
  return before[b.length];
}

/** The ids spelled most like the one given, at most five, nearest first. */
export function nearestIds(given: string, ids: readonly string[]): string[] {
  return ids
    .map((id) => ({ id, away: distance(given.slice(0, LETTERS), id.slice(0, LETTERS)) }))
    .sort((a, b) => a.away - b.away || (a.id < b.id ? -1 : 1))
    .slice(0, MOST)
    .map(({ id }) => id);
}
