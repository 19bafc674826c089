/** Things by station id, looked up by the id's bytes in a file: no text is made of an id that is known. */
export class StationIndex<T> {
  private readonly buckets = new Map<number, { id: Uint8Array; thing: T }[]>();
  private last: { id: Uint8Array; thing: T } | null = null;

  /** What was added under the id that stands from `from` up to `to`. */
  get(bytes: Uint8Array, from: number, to: number): T | undefined {
    if (this.last !== null && isSame(this.last.id, bytes, from, to)) return this.last.thing;
    for (const entry of this.buckets.get(hashOf(bytes, from, to)) ?? []) {
      if (!isSame(entry.id, bytes, from, to)) continue;
      this.last = entry;
      return entry.thing;
    }
    return undefined;
  }

  add(id: Uint8Array, thing: T): T {
    const hash = hashOf(id, 0, id.length);
    const entry = { id, thing };
    const bucket = this.buckets.get(hash);
    if (bucket === undefined) this.buckets.set(hash, [entry]);
    else bucket.push(entry);
    this.last = entry;
    return thing;
  }
}

function isSame(id: Uint8Array, bytes: Uint8Array, from: number, to: number): boolean {
  if (to - from !== id.length) return false;
  for (let i = 0; i < id.length; i++) if (bytes[from + i] !== id[i]) return false;
  return true;
}

/** FNV-1a, cut to the small integers that make quick keys. */
function hashOf(bytes: Uint8Array, from: number, to: number): number {
  let hash = 0x811c9dc5;
  for (let i = from; i < to; i++) hash = Math.imul(hash ^ bytes[i], 0x01000193);
  return hash & 0x3fffffff;
}
