/** Ends of the scale of half-lives. [d] */
const SHORTEST_DAYS = 2;
const LONGEST_DAYS = 1500;

/** Where a half-life stands on the logarithmic scale, from 0 to 1. */
export function halfLifeShare(days: number): number {
  const share = Math.log(days / SHORTEST_DAYS) / Math.log(LONGEST_DAYS / SHORTEST_DAYS);
  return Math.max(0, Math.min(1, share));
}

/** Marks of the scale that people know. */
export const HALF_LIFE_TICKS: readonly { readonly days: number; readonly name: string }[] = [
  { days: 7, name: '1 wk' },
  { days: 30, name: '1 mo' },
  { days: 91, name: '3 mo' },
  { days: 365, name: '1 yr' },
];
