import { ConflictError, InvalidInputError } from '../errors.ts';
import type { ImportEvent } from '../schema/importEvents.ts';
import type { ReadOptions } from '../schema/readOptions.ts';
import { type ImportInput, type ImportTarget, importWeather } from './importWeather.ts';

/** Largest file that is taken. [bytes] */
export const MOST_FILE_BYTES = 300e6;

/** Names that a file can keep: one part, no control characters, not hidden. */
const FILE_NAME = /^[^./\\\p{Cc}][^/\\\p{Cc}]{0,119}$/u;
/** Steps in which progress is told. (0-1) */
const TELL_EVERY = 0.01;

/** A file that was sent, put down in the data folder. */
export interface ReceivedFile {
  readonly path: string;
  /** A station list is kept for the records that come after it. */
  readonly isStationList: boolean;
  /** Takes it away again; a station list stays. */
  remove(): Promise<void>;
}

/** What an inbox needs of the outside. */
export interface InboxDeps {
  /** Writes a body into the data folder. */
  receive(
    name: string,
    body: ReadableStream<Uint8Array>,
    limits: { readonly mostBytes: number; readonly signal: AbortSignal },
  ): Promise<ReceivedFile>;
  /** Station lists that were kept. */
  stationLists(): Promise<readonly string[]>;
  weatherFiles(paths: readonly string[], options?: ReadOptions): Promise<ImportInput>;
  /** The store, held for writing. */
  importStore(files: readonly string[]): Promise<ImportTarget & { close(): Promise<void> }>;
}

/** A file on its way in. */
export interface SentFile {
  readonly name: string;
  readonly body: ReadableStream<Uint8Array>;
  readonly options: ReadOptions;
}

/** Takes weather files one at a time. */
export interface WeatherInbox {
  /**
   * Receives a file whole; what it gives then imports it, telling how far it has come, and must be called.
   * @throws {ConflictError} IMPORT_RUNNING, IMPORT_STOPPED
   * @throws {InvalidInputError} FILE_NAME_INVALID, FILE_TOO_LARGE
   */
  take(file: SentFile): Promise<(tell: (event: ImportEvent) => void) => Promise<void>>;
  /** Stops the import under way: nothing of its file is kept. False where none is. */
  stop(): boolean;
}

/** An inbox over the data folder and the store. */
export function createWeatherInbox(deps: InboxDeps): WeatherInbox {
  let running: AbortController | null = null;
  return {
    async take({ name, body, options }) {
      if (!FILE_NAME.test(name)) {
        throw new InvalidInputError('FILE_NAME_INVALID', `“${name}” is no file name that can be kept.`, {
          hint: 'Give the file a name of at most 120 letters, without a slash and not beginning with a point.',
          details: { field: 'name' },
        });
      }
      if (running !== null) {
        throw new ConflictError('IMPORT_RUNNING', 'Another file is being imported just now.', {
          hint: 'Wait until it is done, or stop it; files are taken one at a time.',
        });
      }
      const mine = new AbortController();
      running = mine;
      const { signal } = mine;
      const end = async (file: ReceivedFile | null) => {
        try {
          await file?.remove();
        } finally {
          running = null;
        }
      };
      let file: ReceivedFile;
      try {
        file = await deps.receive(name, body, { mostBytes: MOST_FILE_BYTES, signal });
      } catch (error) {
        await end(null);
        throw error;
      }
      return async (tell) => {
        try {
          if (file.isStationList) tell({ step: 'list-kept', file: name });
          else tell({ step: 'done', summary: await importOne(file, options, deps, signal, tell) });
        } finally {
          await end(file);
        }
      };
    },
    stop() {
      running?.abort();
      return running !== null;
    },
  };
}

async function importOne(
  { path }: ReceivedFile,
  options: ReadOptions,
  deps: InboxDeps,
  signal: AbortSignal,
  tell: (event: ImportEvent) => void,
) {
  const input = await deps.weatherFiles([path, ...(await deps.stationLists())], options);
  const store = await deps.importStore([path]);
  let told = 0;
  try {
    return await importWeather(input, store, {
      signal,
      onPart({ fractionDone }) {
        if (fractionDone - told < TELL_EVERY) return;
        told = fractionDone;
        tell({ step: 'reading', fractionDone });
      },
    });
  } finally {
    await store.close();
  }
}
