import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { quoted } from './quoted.ts';

/** Folder inside the data folder into which the database puts what does not fit its memory. */
const SPILL_FOLDER = 'weather.spill';

/** Most memory the database takes for itself; the program's own comes on top. */
const MEMORY_LIMIT = '800MB';

/**
 * Settles what the database may use, and reach, for as long as the file is open: the data folder, the files to be
 * imported, and no other; nothing lifts that again.
 * @param folder data folder, absolute
 * @param files paths of files to be imported, absolute
 */
export async function lockDown(
  connection: DuckDBConnection,
  folder: string,
  files: readonly string[],
): Promise<void> {
  const locked = await connection.runAndReadAll("SELECT current_setting('lock_configuration')");
  if (locked.getRows()[0][0] === true) return;
  const settings = [
    `temp_directory = ${quoted(join(folder, SPILL_FOLDER))}`,
    `memory_limit = '${MEMORY_LIMIT}'`,
    // What is read needs no order of its own; what is written is sorted, which this leaves alone.
    'preserve_insertion_order = false',
    'enable_progress_bar = true',
    'enable_progress_bar_print = false',
    `allowed_directories = [${quoted(folder)}]`,
    `allowed_paths = [${files.map(quoted).join(', ')}]`,
    'enable_external_access = false',
    'lock_configuration = true',
  ];
  for (const setting of settings) await connection.run(`SET ${setting}`);
}

/** Settles that a database reaches the files of one folder and no other; nothing lifts that again. @param folder absolute */
export async function lockTo(connection: DuckDBConnection, folder: string): Promise<void> {
  for (const setting of [
    `allowed_directories = [${quoted(folder)}]`,
    `allowed_paths = [${quoted(folder)}]`,
    'enable_external_access = false',
    'lock_configuration = true',
  ]) {
    await connection.run(`SET ${setting}`);
  }
}

/** Takes away what a killed program left of its spilled data; to be called by the file's only writer. */
export const clearSpill = (folder: string): void =>
  rmSync(join(folder, SPILL_FOLDER), { recursive: true, force: true });
