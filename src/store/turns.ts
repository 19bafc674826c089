/** Lets pieces of work on one connection take turns: each begins when the one before has ended, well or not. */
export function createTurns() {
  let last: Promise<unknown> = Promise.resolve();
  return {
    take<T>(work: () => Promise<T>): Promise<T> {
      const task = last.then(work);
      last = task.catch(() => undefined);
      return task;
    },
    /** Resolves when all that was begun has ended. */
    ended: () => last,
  };
}
