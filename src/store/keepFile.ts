import { writeFileSync } from 'node:fs';
import { join, parse } from 'node:path';

/**
 * Writes a text into a new file of a folder, and never over one that is there.
 * @returns the name that it got: the wished one, or one with a number behind it
 */
export function keepFile(folder: string, name: string, text: string): string {
  const { name: stem, ext } = parse(name);
  for (let number = 1; ; number++) {
    const free = number === 1 ? name : `${stem}-${number}${ext}`;
    try {
      writeFileSync(join(folder, free), text, { flag: 'wx' });
      return free;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
  }
}
