/** One thing on a ladder of intervals: a crop after an active, or an active before a crop. */
export interface LadderEntry {
  readonly name: string;
  readonly href: string;
  readonly interval: string | null;
  readonly months: number | null;
  readonly days: number | null;
  readonly fromMemory: boolean;
  readonly fallBack: string | null;
  readonly bioassay: boolean;
  readonly atLeast: boolean;
}

/** A rung: all that share one interval. */
export interface Rung {
  /** The interval in words; null for those without one. */
  readonly interval: string | null;
  /** Length of its bar, as a share of the longest. (0-1) */
  readonly share: number;
  /** Those that a row names first, then those that stand here by a wider row only. */
  readonly entries: readonly LadderEntry[];
}

const DAYS_PER_MONTH = 30.4;
const lengthOf = ({ months, days }: LadderEntry): number =>
  months === null ? Number.POSITIVE_INFINITY : months * DAYS_PER_MONTH + (days ?? 0);

/** Rungs from the shortest interval to the longest, those without one last. */
export function rungsOf(entries: readonly LadderEntry[]): Rung[] {
  const sorted = entries.toSorted((a, b) => lengthOf(a) - lengthOf(b) || a.name.localeCompare(b.name, 'en'));
  const groups = new Map<string | null, LadderEntry[]>();
  for (const entry of sorted) groups.set(entry.interval, [...(groups.get(entry.interval) ?? []), entry]);
  const longest = Math.max(1, ...sorted.map(lengthOf).filter(Number.isFinite));
  return [...groups].map(([interval, members]) => ({
    interval,
    share: interval === null ? 0 : lengthOf(members[0]) / longest,
    entries: members.toSorted((a, b) => Number(a.fallBack !== null) - Number(b.fallBack !== null)),
  }));
}
