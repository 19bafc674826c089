import { randomBytes } from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Bytes of a token that the program makes. */
const TOKEN_BYTES = 18;

/** The token of a data folder, made at first need and readable by its owner alone; a phone that has it stays let in. */
export async function keptToken(folder: string): Promise<string> {
  const path = join(folder, 'token');
  try {
    return (await readFile(path, 'utf8')).trim();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
  const token = randomBytes(TOKEN_BYTES).toString('base64url');
  await mkdir(folder, { recursive: true });
  await writeFile(path, `${token}\n`, { mode: 0o600, flag: 'wx' });
  return token;
}
