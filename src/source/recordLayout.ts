import type { RecordBuilder } from './recordBuilder.ts';

/** One layout of daily records. A new layout is one file that exports such an object, listed in layouts.ts. */
export interface RecordLayout {
  /** What the layout is called in messages. */
  readonly name: string;
  /** Whether a file that begins with this line (without its line end) has the layout. */
  recognises(firstLine: string): boolean;
  /**
   * Adds the values of a whole file, or of one station alone, to the builder.
   * @throws {SourceFailedError} FILE_DAMAGED, naming file, line and column
   */
  read(bytes: Buffer, fileName: string, builder: RecordBuilder, onlyStation?: string): void;
}
