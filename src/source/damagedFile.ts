import { SourceFailedError } from '../errors.ts';

/** What messages about damaged files of a public service advise. */
export const FETCH_AGAIN = 'Fetch the file again, or take it out of the folder.';

/**
 * Refusal of a file whose content breaks its layout; the message names file, line and column.
 * @param line from 1
 * @param column from 1: a character position in fixed-width layouts, a field number in CSV
 */
export function damagedFile(
  fileName: string,
  line: number,
  column: number,
  what: string,
  hint: string = FETCH_AGAIN,
): SourceFailedError {
  return new SourceFailedError('FILE_DAMAGED', `${fileName}, line ${line}, column ${column}: ${what}.`, {
    hint,
    details: { file: fileName, line, column },
  });
}
