/** A dot of a pile: its place along the axis and above it. [px] */
export interface PiledDot {
  readonly x: number;
  /** Height of the dot's centre above the ground. */
  readonly y: number;
}

/**
 * Piles dots of one size like seeds on a table: each keeps its exact place along the axis and lies as low as
 * the dots before it allow, so that none overlaps another.
 *
 * @param places positions along the axis [px]
 * @param diameter size of a dot [px]
 */
export function pileDots(places: readonly number[], diameter: number): PiledDot[] {
  const order = places.map((_, index) => index).sort((a, b) => places[a] - places[b] || a - b);
  const piled: PiledDot[] = new Array(places.length);
  const laid: PiledDot[] = [];
  for (const index of order) {
    const x = places[index];
    const near = laid.filter((dot) => x - dot.x < diameter);
    const heights = near.map((dot) => dot.y + Math.sqrt(diameter ** 2 - (x - dot.x) ** 2));
    const free = (y: number) =>
      near.every((dot) => (x - dot.x) ** 2 + (y - dot.y) ** 2 >= diameter ** 2 - 1e-6);
    const y = [diameter / 2, ...heights.sort((a, b) => a - b)].find(free) ?? diameter / 2;
    piled[index] = { x, y };
    laid.push(piled[index]);
  }
  return piled;
}
