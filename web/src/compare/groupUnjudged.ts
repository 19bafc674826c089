import type { Unjudged } from '../api/contract.ts';

/** Those that cannot be judged for one and the same reason. */
export interface UnjudgedGroup {
  /** The reason, with the names taken out where it tells nothing of its own. */
  readonly reason: string;
  readonly names: readonly string[];
}

const PLAIN: Record<Unjudged['code'], string> = {
  CROP_UNKNOWN: 'The catalogue does not know it, and another treatment of the field goes by the catalogue.',
  INTERVAL_MISSING: 'No label interval is known: read your label.',
  HALF_LIFE_MISSING: 'No half-life is known, which this dose needs.',
  TOO_FEW_YEARS: 'The weather record holds too few years for it.',
};

/** Puts those with a plain reason together; a reason that says more keeps its own words. */
export function groupUnjudged(all: readonly Unjudged[]): UnjudgedGroup[] {
  const groups = new Map<string, string[]>();
  for (const { name, code, reason } of all) {
    // A label entry of the user's own says the same of every crop that it lacks.
    const own = /^Your entry of .* has no interval for /.exec(reason)?.[0];
    if (own !== undefined) {
      const same = own.replace(/ for $/, '.');
      groups.set(same, [...(groups.get(same) ?? []), name]);
      continue;
    }
    const more = code === 'INTERVAL_MISSING' ? reason.replace(/^.*?read your label\.\s*/, '') : '';
    const key = more === '' ? PLAIN[code] : `${PLAIN[code]} ${more}`;
    groups.set(key, [...(groups.get(key) ?? []), name]);
  }
  return [...groups]
    .map(([reason, names]) => ({ reason, names }))
    .sort((a, b) => b.names.length - a.names.length);
}
