import type { FileVersion } from './recordsFolder.ts';

/** One request for a file, or for the rest of it. */
export interface PartRequest {
  /** What messages call the file. */
  readonly title: string;
  readonly url: string;
  /** Whole file of an earlier time that may still hold. */
  readonly held: FileVersion | null;
  /** Beginning that is here already. */
  readonly part: (FileVersion & { readonly bytes: number }) | null;
  readonly partPath: string;
  /** Longest that the answer may take. [ms] */
  readonly withinMs: number;
  readonly signal?: AbortSignal;
  /** Called when the part file has been emptied, before the first piece is written. */
  begin(version: FileVersion): Promise<void>;
  /** Told of every piece that arrives. [B] */
  onBytes(bytes: number): void;
}

/** What came of a request. */
export type PartAnswer =
  | { readonly kind: 'unchanged' }
  | { readonly kind: 'missing' }
  /** All of it is in the part file. */
  | { readonly kind: 'whole'; readonly version: FileVersion }
  /** What is here cannot be gone on with. */
  | { readonly kind: 'restart'; readonly why: string }
  /** Try again; `waitMs` where the service says when. `offline`: no answer came at all. */
  | {
      readonly kind: 'again';
      readonly why: string;
      readonly waitMs: number | null;
      readonly offline: string | null;
    };

/** An answer after which to try again. */
export const again = (why: string, waitMs: number | null = null): PartAnswer => ({
  kind: 'again',
  why,
  waitMs,
  offline: null,
});
