import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, onTestFinished } from 'vitest';

/** Takes a folder away, though what has just ended may still let go of files in it. */
const removeFolder = (folder: string) => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });

/** A new empty folder that is removed when the running test ends. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'drywake-test-'));
  onTestFinished(() => removeFolder(folder));
  return folder;
}

/** Writes a file of that content into a new folder and gives its path. */
export function tempFile(name: string, content: string | Buffer): string {
  const path = join(tempFolder(), name);
  writeFileSync(path, content);
  return path;
}

/** A new empty folder that is removed when the running test file has ended. */
export function tempFolderOfFile(): string {
  const folder = mkdtempSync(join(tmpdir(), 'drywake-test-'));
  afterAll(() => removeFolder(folder));
  return folder;
}
