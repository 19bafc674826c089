import type { ReadOptions } from '../schema/readOptions.ts';
import type { RecordBuilder } from './recordBuilder.ts';

/** What is wanted of a file, beside what the user says about it. */
export interface ReadRequest extends ReadOptions {
  /** Only this station's values; other stations' lines are passed over. */
  readonly onlyStation?: string;
}

/** One layout of daily records. A new layout is one file that exports such an object, listed in layouts.ts. */
export interface RecordLayout {
  /** What the layout is called in messages. */
  readonly name: string;
  /** Whether a file that begins with these lines (without their line ends; the last may be cut) has the layout. */
  recognises(firstLines: readonly string[]): boolean;
  /**
   * Adds the values of a whole file, or of one station alone, to the builder.
   * @throws {SourceFailedError} FILE_DAMAGED, naming file, line and column
   * @throws {InvalidInputError} where the file does not say something that only the user can: UNITS_AMBIGUOUS,
   * UNITS_UNKNOWN, UNITS_CONFLICT, DATES_AMBIGUOUS, STATION_UNNAMED, COLUMNS_AMBIGUOUS
   */
  read(bytes: Buffer, fileName: string, builder: RecordBuilder, request: ReadRequest): void;
}
