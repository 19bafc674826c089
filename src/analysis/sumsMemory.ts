/** Remembers results of runs over whole records up to a number of bytes; the longest unused go first. */
export interface SumsMemory<Result> {
  /** The remembered result, or that of `run`, which is then remembered. */
  get(owner: object, key: string, run: () => Result): Result;
  /** Bytes held. */
  bytes(): number;
}

/**
 * A memory with a budget. Results belong to an owner, by identity; those of an owner that nobody else holds any more
 * are kept until the budget pushes them out.
 *
 * @param budgetBytes most bytes held; one result over it is given but not kept
 * @param bytesOf size of a result [bytes]
 */
export function createSumsMemory<Result>(
  budgetBytes: number,
  bytesOf: (result: Result) => number,
): SumsMemory<Result> {
  const results = new Map<string, { readonly result: Result; readonly bytes: number }>();
  const numbers = new WeakMap<object, number>();
  let owners = 0;
  let held = 0;
  const numberOf = (owner: object): number => {
    const found = numbers.get(owner);
    if (found !== undefined) return found;
    owners++;
    numbers.set(owner, owners);
    return owners;
  };
  return {
    get(owner, key, run) {
      const place = `${numberOf(owner)} ${key}`;
      const found = results.get(place);
      if (found) {
        results.delete(place);
        results.set(place, found);
        return found.result;
      }
      const result = run();
      const bytes = bytesOf(result);
      if (bytes > budgetBytes) return result;
      results.set(place, { result, bytes });
      held += bytes;
      for (const [oldest, one] of results) {
        if (held <= budgetBytes) break;
        results.delete(oldest);
        held -= one.bytes;
      }
      return result;
    },
    bytes: () => held,
  };
}
