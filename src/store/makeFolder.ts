import { mkdirSync } from 'node:fs';
import { SourceFailedError } from '../errors.ts';

/**
 * Makes the data folder where it is not there.
 * @throws {SourceFailedError} STORE_UNREADABLE
 */
export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (cause) {
    throw new SourceFailedError('STORE_UNREADABLE', `The data folder ${folder} cannot be made.`, {
      hint: 'Check that you may write where it is to stand, or name another folder.',
      details: { folder },
      cause,
    });
  }
}
