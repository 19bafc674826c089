/** Most days that a month may miss for its mean to stand. [d] */
const MAX_MISSING_DAYS = 10;
/** Most days in a row that a month may miss for its mean to stand. [d] */
const MAX_MISSING_RUN_DAYS = 4;
/** Share of the years that must be valid for a normal. [0-1] */
const NORMAL_SHARE = 0.8;

/**
 * Whether the monthly mean of a daily value may be worked out.
 *
 * Equation   missing <= 10 [d] and longest run of missing days <= 4 [d]
 * Symbols    present = one entry for each day of the month, true where the day has a value of its own
 * Valid      whole calendar months
 * Source     WMO-100 (2011): no mean with 11 or more days missing, or 5 or more in a row
 * Checked    test/published/completeness.json (C-QC-1)
 * @example monthlyMeanStands([true, false, true]) // true
 */
export function monthlyMeanStands(present: readonly boolean[]): boolean {
  let missing = 0;
  let run = 0;
  let longestRun = 0;
  for (const here of present) {
    run = here ? 0 : run + 1;
    longestRun = Math.max(longestRun, run);
    if (!here) missing++;
  }
  return missing <= MAX_MISSING_DAYS && longestRun <= MAX_MISSING_RUN_DAYS;
}

/**
 * Whether the monthly total of a daily value may be worked out.
 *
 * Equation   every day [d] has a value of its own or lies under a total of several days read later in the same month
 * Symbols    present as in {@link monthlyMeanStands}; covered = true where such a total takes the day in
 * Valid      whole calendar months; a total that reaches into another month covers nothing, because it cannot
 *            be told how much of it fell in which
 * Source     rule for monthly totals in WMO-1203; its clause on accumulations from memory
 * Checked    test/published/completeness.json (C-QC-1)
 * @example monthlyTotalStands([true, false], [false, true]) // true
 */
export const monthlyTotalStands = (present: readonly boolean[], covered: readonly boolean[] = []): boolean =>
  present.every((here, day) => here || covered[day] === true);

/**
 * Whether enough years are valid for a normal.
 *
 * Equation   valid years [a] >= 0.8 × years [a]
 * Source     WMO-100 (2011): at least 80 % of the years, 24 of 30
 * Checked    test/published/completeness.json (C-QC-1)
 * @example normalStands(24, 30) // true
 */
export const normalStands = (validYears: number, years: number): boolean =>
  validYears >= NORMAL_SHARE * years - 1e-9;

/** Years of a standard normal. [a] */
export const NORMAL_YEARS = 30;

/**
 * The latest 30 years that end in a year ending in 0, not after `lastYear`.
 * Source     NOAA readme on the 1981-2010 normals
 * @example standardNormalPeriod(2022) // { from: 1991, to: 2020 }
 */
export function standardNormalPeriod(lastYear: number): { from: number; to: number } {
  const to = Math.floor(lastYear / 10) * 10;
  return { from: to - NORMAL_YEARS + 1, to };
}
