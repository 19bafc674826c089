import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SourceFailedError } from '../errors.ts';
import { CATALOGUE_FILES, type CatalogueTexts } from './catalogueFiles.ts';

/**
 * Text of the catalogue's files in a folder.
 * @param folder path, or file: URL, of the folder that holds actives.csv and the others
 * @throws {SourceFailedError} FILE_NOT_FOUND where one of them cannot be read
 * @example readDataFolder('data').actives.startsWith('iso_name') // true
 */
export function readDataFolder(folder: string | URL): CatalogueTexts {
  const path = folder instanceof URL ? fileURLToPath(folder) : folder;
  const read = (name: string): string => {
    const file = join(path, name);
    try {
      return readFileSync(file, 'utf8');
    } catch (cause) {
      throw new SourceFailedError('FILE_NOT_FOUND', `The catalogue file ${file} cannot be read.`, {
        hint: `The data folder must hold ${Object.values(CATALOGUE_FILES).join(', ')}.`,
        details: { file },
        cause,
      });
    }
  };
  return Object.fromEntries(
    Object.entries(CATALOGUE_FILES).map(([key, name]) => [key, read(name)]),
  ) as CatalogueTexts;
}
