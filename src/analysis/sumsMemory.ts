/** Remembers results of runs over whole records up to a number of bytes; the longest unused go first. */
export interface SumsMemory<Result> {
  /** The remembered result, or that of `run`, which is then remembered. */
  get(owner: object, key: string, run: () => Result): Result;
  /** Forgets all of an owner. */
  forget(owner: object): void;
  /** Bytes held. */
  bytes(): number;
}

/**
 * A memory with a budget. Results belong to an owner, by identity, and go with it: what nobody else holds any more is
 * forgotten.
 *
 * @param budgetBytes most bytes held; one result over it is given but not kept
 * @param bytesOf size of a result [bytes]
 */
export function createSumsMemory<Result>(
  budgetBytes: number,
  bytesOf: (result: Result) => number,
): SumsMemory<Result> {
  interface Entry {
    readonly key: string;
    readonly result: Result;
    readonly bytes: number;
    /** The owner's entries, without holding the owner. */
    readonly siblings: Map<string, Entry>;
  }
  const ofOwner = new WeakMap<object, Map<string, Entry>>();
  /** All entries, longest unused first; they hold results but no owner. */
  const byUse = new Set<Entry>();
  let held = 0;
  const drop = (entry: Entry) => {
    if (!byUse.delete(entry)) return;
    entry.siblings.delete(entry.key);
    held -= entry.bytes;
  };
  const gone = new FinalizationRegistry<Map<string, Entry>>((entries) => {
    for (const entry of [...entries.values()]) drop(entry);
  });
  const entriesOf = (owner: object): Map<string, Entry> => {
    const found = ofOwner.get(owner);
    if (found) return found;
    const entries = new Map<string, Entry>();
    ofOwner.set(owner, entries);
    gone.register(owner, entries);
    return entries;
  };
  return {
    get(owner, key, run) {
      const siblings = entriesOf(owner);
      const found = siblings.get(key);
      if (found) {
        byUse.delete(found);
        byUse.add(found);
        return found.result;
      }
      const result = run();
      const bytes = bytesOf(result);
      if (bytes > budgetBytes) return result;
      const entry = { key, result, bytes, siblings };
      siblings.set(key, entry);
      byUse.add(entry);
      held += bytes;
      for (const oldest of byUse) {
        if (held <= budgetBytes) break;
        drop(oldest);
      }
      return result;
    },
    forget(owner) {
      for (const entry of [...(ofOwner.get(owner)?.values() ?? [])]) drop(entry);
    },
    bytes: () => held,
  };
}
