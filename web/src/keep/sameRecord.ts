/** Whether two records say the same; the order of names and what is left out do not count. */
export const sameRecord = (a: unknown, b: unknown): boolean => inOrder(a) === inOrder(b);

const inOrder = (value: unknown): string =>
  JSON.stringify(value, (_, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  ) ?? '';
