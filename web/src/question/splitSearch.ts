/** Takes keys that a place adds to the question out of a query; the rest is the question’s. */
export function splitSearch(search: string, keys: readonly string[]) {
  const query = new URLSearchParams(search);
  const extras: Record<string, string | undefined> = {};
  for (const key of keys) {
    extras[key] = query.get(key) ?? undefined;
    query.delete(key);
  }
  return { extras, search: `?${query}` };
}

/** Adds a place’s own keys to a query; those without a value are left out. */
export function addToSearch(search: string, extras: Readonly<Record<string, string | undefined>>): string {
  const more = Object.entries(extras).flatMap(([key, value]) =>
    value === undefined ? [] : [`&${key}=${encodeURIComponent(value).replaceAll('%2C', ',')}`],
  );
  return `${search}${more.join('')}`;
}
