/** A record under construction, or part of one. */
export type Part = Record<string, unknown>;

/** The value at a path such as "place.latitudeDeg" or "actives.0.name"; undefined where there is none. */
export const valueAt = (part: Part, path: string): unknown =>
  path
    .split('.')
    .reduce<unknown>((inside, key) => (inside as Part | null | undefined)?.[key] ?? undefined, part);

/** Puts a value at a path, making what leads there; undefined takes it away. */
export function putAt(part: Part, path: string, value: unknown): void {
  const [key, ...rest] = path.split('.');
  if (rest.length === 0) {
    if (value === undefined) delete part[key];
    else part[key] = value;
    return;
  }
  const inside = part[key] ?? (value === undefined ? null : /^\d/.test(rest[0]) ? [] : {});
  if (inside === null) return;
  part[key] = inside;
  putAt(inside as Part, rest.join('.'), value);
  const kept = Object.values(inside as Part).filter((one) => !isEmpty(one));
  if (Array.isArray(inside)) part[key] = kept;
  else if (kept.length === 0) delete part[key];
}

const isEmpty = (value: unknown): boolean =>
  value === undefined ||
  value === null ||
  (typeof value === 'object' && !Array.isArray(value) && Object.keys(value).length === 0);
