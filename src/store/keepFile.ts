import { linkSync, rmSync, writeFileSync } from 'node:fs';
import { join, parse } from 'node:path';

/**
 * Writes a text into a new file of a folder, whole or not at all, and never over one that is there.
 * @returns the name that it got: the wished one, or one with a number behind it
 */
export function keepFile(folder: string, name: string, text: string): string {
  const { name: stem, ext } = parse(name);
  const part = join(folder, `.${stem}.${process.pid}.part`);
  try {
    writeFileSync(part, text);
    for (let number = 1; ; number++) {
      const free = number === 1 ? name : `${stem}-${number}${ext}`;
      try {
        linkSync(part, join(folder, free));
        return free;
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      }
    }
  } finally {
    rmSync(part, { force: true });
  }
}
