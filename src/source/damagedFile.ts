import { SourceFailedError } from '../errors.ts';

/** What every message about a damaged file advises. */
export const FETCH_AGAIN = 'Fetch the file again, or take it out of the folder.';

/**
 * Refusal of a file whose content breaks its layout; the message names file, line and column.
 * @param line from 1
 * @param column from 1: a character position in fixed-width layouts, a field number in CSV
 */
export function damagedFile(fileName: string, line: number, column: number, what: string): SourceFailedError {
  return new SourceFailedError('FILE_DAMAGED', `${fileName}, line ${line}, column ${column}: ${what}.`, {
    hint: FETCH_AGAIN,
    details: { file: fileName, line, column },
  });
}
