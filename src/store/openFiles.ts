import { existsSync, realpathSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { ConflictError, type DrywakeError, SourceFailedError } from '../errors.ts';

export type OpenMode = 'read' | 'write';

interface OpenFile {
  readonly mode: OpenMode;
  readonly instance: Promise<DuckDBInstance>;
  users: number;
}

// A file lock belongs to the process, so a second instance in this one would not be stopped by it and its writes
// would be lost. Hence one instance per file here, shared among readers.
const openFiles = new Map<string, OpenFile>();

/** What a user can do where a file cannot be had, as hints. */
export interface FileHints {
  readonly busyHere: string;
  readonly busyElsewhere: string;
  readonly damaged: string;
}

const WEATHER_HINTS: FileHints = {
  busyHere: 'Wait until the running import or request has ended, then try again.',
  busyElsewhere:
    'An import probably runs there: wait until it has ended, then try again. Stop the server or import that uses this data folder where none should.',
  damaged:
    'Check that you may read and write the data folder; a damaged file can be moved away and the records imported again.',
};

/** A database file held open; `close` gives it back. */
export interface HeldFile {
  readonly instance: DuckDBInstance;
  close(): void;
}

/**
 * Opens a database file, read-only or alone for writing.
 * @throws {ConflictError} STORE_BUSY where another process, or another part of this one, holds it
 * @throws {SourceFailedError} STORE_UNREADABLE where it is no database file or cannot be opened
 */
export async function holdFile(
  path: string,
  mode: OpenMode,
  hints: FileHints = WEATHER_HINTS,
): Promise<HeldFile> {
  const key = join(realpathSync(dirname(path)), basename(path));
  let file = openFiles.get(key);
  if (file !== undefined && (file.mode === 'write' || mode === 'write')) throw busyHere(path, hints.busyHere);
  if (file === undefined) {
    const options = { access_mode: mode === 'read' ? 'READ_ONLY' : 'READ_WRITE' };
    file = { mode, instance: DuckDBInstance.create(path, options), users: 0 };
    openFiles.set(key, file);
  }
  const held = file;
  held.users++;
  const release = () => {
    held.users--;
    if (held.users === 0) openFiles.delete(key);
    return held.users === 0;
  };
  try {
    const instance = await held.instance;
    let closed = false;
    const close = () => {
      if (closed) return;
      closed = true;
      if (release()) instance.closeSync();
    };
    return { instance, close };
  } catch (error) {
    release();
    throw openFailure(path, error, hints);
  }
}

const busyHere = (path: string, hint: string): ConflictError =>
  new ConflictError('STORE_BUSY', `The store ${path} is already open in this program.`, {
    hint,
    details: { path },
  });

function openFailure(path: string, error: unknown, hints: FileHints): DrywakeError {
  const reason = error instanceof Error ? error.message : String(error);
  if (/lock on file|being used by another process/i.test(reason)) {
    const holder = /PID (\d+)/.exec(reason)?.[1];
    const who = holder === undefined ? 'another process' : `another process (number ${holder})`;
    return new ConflictError('STORE_BUSY', `The store ${path} is held by ${who}.`, {
      hint: hints.busyElsewhere,
      details: { path, ...(holder !== undefined && { process: Number(holder) }) },
    });
  }
  const is = existsSync(path) ? 'is no store that can be opened' : 'cannot be created';
  return new SourceFailedError('STORE_UNREADABLE', `The store ${path} ${is}.`, {
    hint: hints.damaged,
    details: { path },
    cause: error,
  });
}
