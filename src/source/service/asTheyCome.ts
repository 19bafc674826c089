/**
 * Results of work under way, in the order in which they come: each time all that are ready, nulls left out. Ends with
 * the last one, or in the error of the first that fails.
 */
export async function* asTheyCome<T>(
  work: readonly Promise<T | null>[],
): AsyncGenerator<readonly T[], void, undefined> {
  let ready: T[] = [];
  let wake = () => {};
  let over = false;
  const noted = work.map(async (one) => {
    const result = await one;
    if (result === null) return;
    ready.push(result);
    wake();
  });
  const all = Promise.all(noted).finally(() => {
    over = true;
    wake();
  });
  all.catch(() => undefined);
  for (;;) {
    if (ready.length > 0) {
      const batch = ready;
      ready = [];
      yield batch;
    } else if (over) {
      break;
    } else {
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
    }
  }
  await all;
}
