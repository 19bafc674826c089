import type { Places } from './places.ts';

/** Where a case was published; authors are left out on purpose. */
export interface CaseSource {
  readonly title: string;
  readonly publisher: string;
  /** null where the year was not noted. */
  readonly year: number | null;
}

export type CheckVerdict = 'agreed' | 'not agreed';

/** One thing a trial measured that the model can be held against. */
export interface Check {
  readonly measured: string;
  /** When the model counts as agreeing; written before the model was run. */
  readonly criterion: string;
  /** Why that is a fair thing to ask. */
  readonly fair: string;
  /** The verdict as it stands; the test fails where the computation gives another. */
  readonly recorded: CheckVerdict;
}

export interface CheckResult {
  /** What the model gives, in words with its figures. */
  readonly model: string;
  readonly agrees: boolean;
}

interface CaseHead {
  readonly id: string;
  readonly source: CaseSource;
  /** What was done and seen, in short. */
  readonly measured: string;
  /** Why the verdict is what it is; for a case that cannot be run, what is missing. */
  readonly why: string;
}

/** A case with enough numbers to run. */
export interface RunCase<Name extends string = string> extends CaseHead {
  readonly kind: 'run';
  /** All that the source does not give and the computation takes. */
  readonly assumptions: readonly string[];
  /** Whether it needs the real records of ../shared/weather. */
  readonly needsRecords: boolean;
  readonly checks: Readonly<Record<Name, Check>>;
  run(places: Places): Promise<Readonly<Record<Name, CheckResult>>>;
}

/** A case that the model cannot be held against. */
export interface UnrunCase extends CaseHead {
  readonly kind: 'cannot be run';
}

export type PublishedCase = RunCase | UnrunCase;

/** A case with its check names kept, so that `run` must answer each of them. */
export const runCase = <Name extends string>(given: Omit<RunCase<Name>, 'kind'>): RunCase => ({
  kind: 'run',
  ...(given as Omit<RunCase, 'kind'>),
});

export const unrunCase = (given: CaseHead): UnrunCase => ({ kind: 'cannot be run', ...given });
