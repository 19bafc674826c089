import { ConflictError, MissingDataError, SourceFailedError } from '../errors.ts';

/** How messages call the records of a shelf. */
export interface ShelfWords {
  /** Beginning of the codes of its refusals. */
  readonly code: string;
  /** "field". */
  readonly noun: string;
}

/** The refusal of an id that is not kept. */
export const recordUnknown = ({ code, noun }: ShelfWords, id: string, isRemoved: boolean): MissingDataError =>
  new MissingDataError(
    `${code}_UNKNOWN`,
    isRemoved ? `The ${noun} "${id}" was removed.` : `There is no ${noun} "${id}".`,
    {
      hint: isRemoved
        ? 'Undo the removal to have it back.'
        : `The list of all shows each ${noun} with its id.`,
      details: { id, removed: isRemoved },
    },
  );

/** The refusal of a change to a version that is no longer the present one. */
export const recordChanged = (
  { code, noun }: ShelfWords,
  name: string,
  { given, version, removed }: { given: number; version: number; removed: boolean },
  kept: unknown,
): ConflictError =>
  new ConflictError(
    `${code}_CHANGED`,
    `The ${noun} “${name}” was ${removed ? 'removed' : 'changed'} meanwhile: it is at version ${version}, and this change began from version ${given}.`,
    {
      hint: 'Nothing was overwritten. Look at what is kept now, then keep it or put yours in its place.',
      details: { given, version, removed, kept },
    },
  );

/** The refusal to begin a record whose id is taken. */
export const recordExists = (
  { code, noun }: ShelfWords,
  id: string,
  version: number,
  kept: unknown,
): ConflictError =>
  new ConflictError(`${code}_EXISTS`, `There is a ${noun} "${id}" already.`, {
    hint: 'Give the new one another id, or change the one that is kept.',
    details: { id, version, kept },
  });

/** The refusal to take back what has nothing before it. */
export const nothingToUndo = ({ code, noun }: ShelfWords, name: string): ConflictError =>
  new ConflictError(`${code}_FIRST`, `The ${noun} “${name}” is as it was first entered.`, {
    hint: 'There is no change to take back; remove it if it is not wanted.',
  });

/** The failure to read a record back that is kept. */
export const recordDamaged = ({ code, noun }: ShelfWords, id: string, cause: unknown): SourceFailedError =>
  new SourceFailedError(`${code}_DAMAGED`, `The ${noun} "${id}" cannot be read from the store.`, {
    hint: 'Restore the last backup, or the copy that stands beside the store.',
    details: { id },
    cause,
  });
