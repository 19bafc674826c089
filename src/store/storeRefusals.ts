import { basename } from 'node:path';
import { ConflictError, MissingDataError, SourceFailedError } from '../errors.ts';

/** The refusal of a record asked of a store without any. */
export const emptyStore = (stationId: string): MissingDataError =>
  new MissingDataError(
    'STORE_EMPTY',
    `There is no record of station "${stationId}": the store holds no station yet.`,
    {
      hint: 'Import weather records first.',
      details: { stationId },
    },
  );

/** The refusal of an import into a store opened for reading. */
export const readOnlyStore = (path: string): ConflictError =>
  new ConflictError('STORE_READ_ONLY', `The store ${path} is open for reading only.`, {
    hint: 'Open it for writing to import records.',
    details: { path },
  });

/** The refusal to mix a made-up record with a real one. */
export function inventedConflict(stationId: string, storedIsInvented: boolean): ConflictError {
  const kind = (invented: boolean) => (invented ? 'an invented' : 'a real');
  return new ConflictError(
    'STATION_INVENTED',
    `Station ${stationId} is stored as ${kind(storedIsInvented)} record; ${kind(!storedIsInvented)} one cannot be mixed into it.`,
    { hint: 'Import it into another data folder.', details: { stationId } },
  );
}

/** The end of an import that was told to stop. */
export const importStopped = (cause?: unknown): ConflictError =>
  new ConflictError('IMPORT_STOPPED', 'The import was stopped; the file in hand was not imported.', {
    hint: 'Start the same import again: files that are in the store are passed over.',
    cause,
  });

/** The refusal of a packed file that would grow without end. */
export const swollenFile = (path: string): SourceFailedError =>
  new SourceFailedError(
    'FILE_TOO_LARGE',
    `${basename(path)} unpacks to far more than a record of its size would.`,
    {
      hint: 'Fetch the file again, or unpack it first where it is sound.',
      details: { file: basename(path) },
    },
  );

/** The failure of a write for a reason outside the records; nothing of it is kept. */
export const writeFailed = (path: string, cause: unknown): SourceFailedError =>
  new SourceFailedError(
    'STORE_WRITE_FAILED',
    `The store ${path} could not be written; it is as it was before.`,
    {
      hint: 'Check the free space of the disk and that you may write the data folder, then do it again.',
      details: { path },
      cause,
    },
  );

/**
 * Refuses a file written by a newer program.
 * @throws {ConflictError} STORE_NEWER
 */
export function assertNotNewer(path: string, version: number, known: number): void {
  if (version <= known) return;
  throw new ConflictError(
    'STORE_NEWER',
    `The store ${path} has version ${version}; this program knows versions up to ${known}.`,
    {
      hint: 'Use the newer program that wrote it, or name another data folder.',
      details: { path, version, known },
    },
  );
}

/** The refusal to read a file that would first have to be brought up to date, which is not possible. */
export const olderStore = (path: string, known: number, cause: unknown): ConflictError =>
  new ConflictError(
    'STORE_OLDER',
    `The store ${path} was written by an older program and cannot be brought up to date.`,
    {
      hint: 'Check the free space of the disk and that you may write the data folder, then ask again.',
      details: { path, known },
      cause,
    },
  );
