import type { HindcastYear } from '../analysis/hindcast.ts';
import type { BatchAnswer } from '../schema/batch.ts';
import type { HindcastQuestion } from '../schema/hindcast.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import type { AskedQuestion } from '../schema/question.ts';
import type { RegionQuestion, RegionRow } from '../schema/region.ts';
import type { StationExtent, StationRecord } from '../schema/weather.ts';
import type { LentRecord } from './lentTemperatures.ts';

/** All records that a question's climate is worked out from. */
export interface PackedWeather {
  readonly records: readonly StationRecord[];
  /** The stations that a companion or neighbours were chosen from; empty where none were looked for. */
  readonly stations: readonly StationExtent[];
}

/** Work that can be done anywhere: all it needs stands in it. */
export type WorkTask =
  | { readonly kind: 'region'; readonly question: RegionQuestion; readonly stations: readonly LentRecord[] }
  | {
      readonly kind: 'batch';
      readonly questions: readonly AskedQuestion[];
      readonly weather: PackedWeather;
      /** Name of these records, by which their climates are kept from task to task. */
      readonly weatherId: string;
      /** The user's label entries that the questions may name. */
      readonly labels: readonly StoredLabel[];
    }
  | {
      readonly kind: 'hindcast';
      readonly question: HindcastQuestion;
      readonly years: readonly number[];
      readonly weather: PackedWeather;
      /** The user's label entries that the question may name. */
      readonly labels: readonly StoredLabel[];
    };

/** What comes of each kind of work. */
export interface WorkResults {
  readonly region: RegionRow[];
  readonly batch: BatchAnswer[];
  readonly hindcast: HindcastYear[];
}

/** Workers that do tasks side by side; a task's result does not depend on which one does it. */
export interface Workshop {
  readonly workers: number;
  /** @throws {ConflictError} STOPPED once the signal is given */
  run<Kind extends WorkTask['kind']>(
    task: Extract<WorkTask, { kind: Kind }>,
    signal?: AbortSignal,
  ): Promise<WorkResults[Kind]>;
  /** Ends the workers. */
  close(): Promise<void>;
}
