import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

/** File in the data folder that says which server holds the store of fields. */
const SERVED_FILE = 'server.json';

const servedBySchema = z.object({ address: z.url(), process: z.int(), token: z.string().nullable() });

/** The server that holds a data folder's fields. */
export type ServedBy = z.infer<typeof servedBySchema>;

/** Says in the data folder who serves it, so that commands know whom to ask. */
export function tellServedBy(folder: string, served: ServedBy): void {
  // Whatever stands there goes first: a link would lead elsewhere, and an old file keeps its rights.
  untellServedBy(folder);
  writeFileSync(join(folder, SERVED_FILE), `${JSON.stringify(served)}\n`, { mode: 0o600, flag: 'wx' });
}

/** Takes that back. */
export const untellServedBy = (folder: string): void => rmSync(join(folder, SERVED_FILE), { force: true });

/**
 * Who said last to serve a data folder; null where nobody did. A server that was killed leaves its word behind.
 * @param holder process that is known to hold the store; another's word is not taken
 */
export function readServedBy(folder: string, holder?: unknown): ServedBy | null {
  try {
    const served = servedBySchema.parse(JSON.parse(readFileSync(join(folder, SERVED_FILE), 'utf8')));
    return holder === undefined || holder === served.process ? served : null;
  } catch {
    return null;
  }
}
