import { constants, copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import { dirname, join, parse } from 'node:path';
import { SourceFailedError } from '../errors.ts';

/**
 * Keeps a copy of a closed file of an older version beside it, whole or not at all: weather.duckdb becomes
 * weather.version-2.duckdb.
 * @throws {SourceFailedError} STORE_NOT_COPIED; the file is then as it was
 */
export function copyOlder(path: string, version: number): void {
  const { name, ext } = parse(path);
  const copy = join(dirname(path), `${name}.version-${version}${ext}`);
  const part = `${copy}.part`;
  try {
    copyFileSync(path, part, constants.COPYFILE_FICLONE);
    renameSync(part, copy);
    // What could not be written into the file itself when it was closed stands beside it.
    if (existsSync(`${path}.wal`)) copyFileSync(`${path}.wal`, `${copy}.wal`);
  } catch (cause) {
    rmSync(part, { force: true });
    throw new SourceFailedError(
      'STORE_NOT_COPIED',
      `The store ${path} is of version ${version} and has to be brought up to date, but no copy of it can be kept.`,
      {
        hint: 'Check the free space of the disk and that you may write the data folder. The store is as it was.',
        details: { path, version },
        cause,
      },
    );
  }
}
