import { sameRecord } from './sameRecord.ts';

/** One part of a record in which two versions differ, in words. */
export interface Difference {
  readonly part: string;
  readonly mine: string;
  readonly theirs: string;
}

/**
 * Where two versions of a record differ, part by part; of lists only the entries that differ.
 * @param names words for the parts
 */
export function differences(
  mine: object,
  theirs: object,
  names: Readonly<Record<string, string>>,
): Difference[] {
  const keys = [...new Set([...Object.keys(mine), ...Object.keys(theirs)])];
  return keys.flatMap((key) => {
    const [a, b] = [mine, theirs].map((record) => (record as Record<string, unknown>)[key]);
    if (sameRecord(a ?? null, b ?? null)) return [];
    const part = names[key] ?? key;
    if (!Array.isArray(a) || !Array.isArray(b)) return [{ part, mine: sayValue(a), theirs: sayValue(b) }];
    return [{ part, mine: sayOwn(a, b), theirs: sayOwn(b, a) }];
  });
}

/** The entries of a list that another lacks. */
function sayOwn(list: readonly unknown[], other: readonly unknown[]): string {
  const own = list.filter((entry) => !other.some((there) => sameRecord(entry, there)));
  return own.length === 0 ? 'nothing of its own' : own.map(sayValue).join('; ');
}

function sayValue(value: unknown): string {
  if (value === undefined || value === null || value === '') return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'nothing' : value.map(sayValue).join(', ');
  if (typeof value !== 'object') return `${value}`;
  return Object.entries(value)
    .filter(([key, inner]) => key !== 'id' && inner !== undefined && !isEmpty(inner))
    .map(([key, inner]) =>
      typeof inner === 'string' || typeof inner === 'number' ? sayValue(inner) : `${key}: ${sayValue(inner)}`,
    )
    .join(', ');
}

const isEmpty = (value: unknown): boolean => value === '' || (Array.isArray(value) && value.length === 0);
