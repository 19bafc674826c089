import type { Places } from './places.ts';
import type { CheckResult, CheckVerdict, PublishedCase } from './publishedCase.ts';

/** What a case came to; `skipped` where it needs real records and there are none. */
export interface Judged {
  readonly given: PublishedCase;
  readonly state: 'run' | 'skipped' | 'cannot be run';
  /** Result of each check that was run, by name. */
  readonly results: Readonly<Record<string, CheckResult>>;
}

/** Runs a case, or says why there is no result. */
export async function judge(given: PublishedCase, places: Places | null): Promise<Judged> {
  if (given.kind === 'cannot be run') return { given, state: 'cannot be run', results: {} };
  if (!given.needsRecords) return { given, state: 'run', results: await given.run(NO_PLACES) };
  if (places === null) return { given, state: 'skipped', results: {} };
  return { given, state: 'run', results: await given.run(places) };
}

const NO_PLACES: Places = {
  climate: () => Promise.reject(new Error('a case that says it needs no records asked for one')),
};

/** Verdict of one check as the computation gives it. */
export const verdictOf = ({ agrees }: CheckResult): CheckVerdict => (agrees ? 'agreed' : 'not agreed');

/** A case agrees where every one of its checks does; the rest is told apart by the count. */
export function caseVerdict(verdicts: readonly CheckVerdict[]): string {
  const agreed = verdicts.filter((verdict) => verdict === 'agreed').length;
  if (agreed === verdicts.length) return 'agreed';
  return agreed === 0 ? 'not agreed' : `not agreed (${agreed} of ${verdicts.length} checks did)`;
}
