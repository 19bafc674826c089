import { rename, rm, writeFile } from 'node:fs/promises';
import { SourceFailedError } from '../errors.ts';

/**
 * Writes a file whole or not at all: what stood there stays until the new text is complete.
 * @throws {SourceFailedError} FILE_NOT_WRITTEN
 */
export async function writeTextFile(path: string, text: string | Iterable<string>): Promise<void> {
  const part = `${path}.${process.pid}.part`;
  try {
    await writeFile(part, text, { flag: 'wx' });
    await rename(part, path);
  } catch (cause) {
    await rm(part, { force: true });
    throw new SourceFailedError('FILE_NOT_WRITTEN', `The file ${path} cannot be written.`, {
      hint: 'Check that its folder is there and that you may write to it.',
      details: { path },
      cause,
    });
  }
}
